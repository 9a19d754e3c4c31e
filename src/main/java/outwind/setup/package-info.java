/**
 * Setting the board down: where it touches the bed, whether it rocks, and where shims go.
 *
 * <p>Millimetres, in the frame of the readings. {@link outwind.setup.RestingPose} is how the board lies if nobody
 * holds it; {@link outwind.setup.Setup} is how to hold it for one cut plane, with the {@link outwind.setup.Supports}
 * that keep it from giving under a push: {@link outwind.setup.Stiffness} of the wood, a plate, and as few
 * {@link outwind.setup.Shim}s as will do.
 */
package outwind.setup;
