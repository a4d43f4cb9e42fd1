/** What a scenario file says it is. In a file of its own: the page asks for it before it loads anything that reads scenarios. */
export const scenarioFormat = "rootfront-scenario/1";
