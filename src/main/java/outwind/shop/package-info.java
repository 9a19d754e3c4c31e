/**
 * What is in the workshop: the bed, the cutters, clamps and shims at hand. Read {@link outwind.shop.Shop} first.
 */
package outwind.shop;
