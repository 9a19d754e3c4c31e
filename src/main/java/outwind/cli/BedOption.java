package outwind.cli;

/** A bed as typed on the command line. */
record BedOption(LengthOption length, LengthOption width) { }
