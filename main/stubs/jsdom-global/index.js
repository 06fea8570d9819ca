// called once when gpxparser loads: nothing becomes global
module.exports = () => {};
