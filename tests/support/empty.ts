// Stands in for 'server-only' under vitest, which has no server bundle.
export {}
