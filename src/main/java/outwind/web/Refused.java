package outwind.web;

/** A request that is not granted, with the status of HTTP (RFC 9110) and a sentence for the person. */
final class Refused extends Exception {

    private static final long serialVersionUID = 1;

    private final int status;

    Refused(int status, String sentence) {
        super(sentence);
        this.status = status;
    }

    int status() {
        return status;
    }
}
