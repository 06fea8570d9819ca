/** How map, strip and turns are inked. Sizes are millimetres of the drawings' own. Colours come from the page. */
export const DRAWING_STYLE = `
svg{display:block}
.ink-barred{color:var(--barred)}.ink-tight{color:var(--tight)}.ink-unknown{color:var(--unknown)}.ink-care{color:var(--care)}.ink-clear{color:var(--ink)}
.drive-map text,.strip text,.turn text{font-family:inherit;fill:var(--ink)}
.drive-map{border:.25mm solid var(--rule);background:var(--paper)}
.map-beside path{fill:none;stroke:var(--soft)}
.map-road-0{stroke-width:.7}.map-road-1{stroke-width:.55}.map-road-2{stroke-width:.4}.map-road-3{stroke-width:.2}
.map-drive-edge{fill:none;stroke:var(--paper);stroke-width:2.2;stroke-linejoin:round}
.map-drive{fill:none;stroke:var(--ink);stroke-width:1.1;stroke-linejoin:round;stroke-linecap:round}
.map-town{font-size:2.9px;text-anchor:middle;paint-order:stroke;stroke:var(--paper);stroke-width:.7px}
.map-town-3{font-size:3.5px;font-weight:700}
.map-start,.map-end{fill:var(--paper);stroke:var(--ink);stroke-width:.6}
.map-end{fill:var(--ink)}
.map-label rect{fill:var(--paper);stroke:var(--ink);stroke-width:.25}
.map-label circle{fill:var(--ink)}
.map-leader{stroke:var(--ink);stroke-width:.25}
.map-label text{font-size:3px;font-weight:700}
.map-scale path{fill:none;stroke:var(--ink);stroke-width:.3}
.map-scale text{font-size:2.6px;paint-order:stroke;stroke:var(--paper);stroke-width:.7px}
.strip-ground{fill:var(--paper)}
.strip-edge{fill:none;stroke:var(--ink);stroke-width:.3}
.strip-bridge .strip-edge{stroke-width:.7}
.strip-tunnel .strip-ground{fill:var(--sunk)}
.strip-tunnel .strip-edge{stroke-dasharray:.9 .7}
.strip-ferry .strip-ground,.strip-offMap .strip-ground{fill:none}
.strip-ferry .strip-edge{stroke-dasharray:1.4 .9}
.strip-offMap .strip-edge{stroke-dasharray:.5 .9}
.strip-guessed{fill:none;stroke:var(--soft);stroke-width:.3;stroke-dasharray:.6 .6}
.strip-stub{stroke:var(--ink);stroke-width:.3}.strip-stub-main{stroke-width:.7}
.strip-water{fill:none;stroke:var(--soft);stroke-width:.3;stroke-dasharray:2 .5 .5 .5}
.strip-wood{fill:var(--sunk)}
.strip-building{fill:var(--sunk);opacity:.45}
.strip-crossing{fill:none;stroke:var(--ink);stroke-width:.35}
.strip-above{fill:var(--ink)}
.strip-height{font-size:2.5px;font-weight:700;text-anchor:end}
.strip-tick{stroke:var(--soft);stroke-width:.2}
.strip-km{font-size:2.5px;text-anchor:end}.strip-mile{font-size:2px;text-anchor:end;fill:var(--faint)}
.strip-name{font-size:2.3px;text-anchor:middle;paint-order:stroke;stroke:var(--paper);stroke-width:.6px}
.strip-town{font-size:2.6px;text-anchor:middle;paint-order:stroke;stroke:var(--paper);stroke-width:.9px}
.strip-town-3{font-size:3.3px;font-weight:700}
.strip-leader{fill:none;stroke:var(--ink);stroke-width:.2}
.strip-dot{fill:var(--ink)}
.strip-reach{fill:none;stroke:currentColor;stroke-width:.9}
.strip-number{font-size:3px;font-weight:700}.strip-says{font-size:2.5px}.strip-figure{font-size:2.3px}
.turn path{fill:none}
.turn-kerb{stroke:var(--ink);stroke-width:.5}
.turn-line{stroke:var(--soft);stroke-width:.25;stroke-dasharray:1.2 .8}
.turn-vehicle{stroke:var(--soft);stroke-width:.2}
.turn-tail{stroke:var(--barred);stroke-width:.6}
.turn-wheel{stroke:var(--ink);stroke-width:.25;stroke-dasharray:.4 .6}
.turn-bar{stroke:var(--ink);stroke-width:.3}
.turn-bar-text{font-size:2.4px}
`;
