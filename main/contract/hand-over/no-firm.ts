/** Nothing of the firm's own stands on what is handed over. */
export const NO_FIRM = { heading: '', telephone: '' };

/** Said to whoever hands over while no telephone is set; where it is set is for window and terminal to add. */
export const NO_TELEPHONE =
  'No telephone of your firm is set: the sheet tells the driver to ring whoever handed it out, and gives no number.';
