/** Style sheets are taken up by the build; they export nothing. */
declare module '*.css';
