/** The whole jar as one module, so that it can become part of a runtime that holds nothing else. */
module outwind {
    requires java.desktop;
    // Serves the page at the bench.
    requires jdk.httpserver;
    // Named by the JSON library, though no dates of databases are ever written.
    requires java.sql;
}
