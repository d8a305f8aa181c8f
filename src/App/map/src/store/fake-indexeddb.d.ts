// Its package names its types in a way that the compiler does not follow; only its effect is used.
declare module "fake-indexeddb/auto";
