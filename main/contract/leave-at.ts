/** A leave time as it crosses to the host: local wall time, YYYY-MM-DDTHH:MM. */
export const LEAVE_AT = /^\d{4}-\d\d-\d\dT\d\d:\d\d$/;
