/**
 * How far a thin wooden plate bends under a load. Read {@link outwind.numeric.plate.OrthotropicPlate} first.
 */
package outwind.numeric.plate;
