/** Written in by the build: the version that every entry carries. */
declare const __APP_VERSION__: string;
