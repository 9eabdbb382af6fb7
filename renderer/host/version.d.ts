/** The program's version, put in by the build. */
declare const __BACKSTAY_VERSION__: string;
