// never asked for anything
module.exports = {};
