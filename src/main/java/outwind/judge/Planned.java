package outwind.judge;

/** Which cuts are worth making as things stand. */
public enum Planned {

    /** Both faces: the board makes what is wanted of it. */
    BOTH_FACES,

    /** Face A alone, just clean; then the board is measured again. The craftsman's way with a doubtful board. */
    FACE_A,

    /**
     * None yet: the board falls short, a reading that looks wrong decides whether it does, or the
     * board is judged as it will be later.
     */
    NONE
}
