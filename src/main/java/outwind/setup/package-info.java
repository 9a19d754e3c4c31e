/**
 * Setting the board down: where it touches the bed, whether it rocks, and where shims go.
 *
 * <p>Millimetres, in the frame of the readings. {@link outwind.setup.RestingPose} is how the board lies if nobody
 * holds it; {@link outwind.setup.Setup} is how to hold it for one cut plane, with its {@link outwind.setup.Shim}s.
 */
package outwind.setup;
