/** Nothing of the firm's own stands on what is handed over. */
export const NO_FIRM = { heading: '', telephone: '' };
