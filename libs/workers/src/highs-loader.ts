import imported from 'highs';

// The package's types are those of CommonJS, where the loader is a field; imported as a module it is the default itself.
type Load = typeof imported.default;
const loaded: unknown = imported;

/** Loads the solver, each call with a memory of its own. */
export const loadHighs: Load = typeof loaded === 'function' ? (loaded as Load) : imported.default;
