/** Stands in for parts of jsPDF that Overdeck never calls (see vite.config.ts). */
export default undefined;
