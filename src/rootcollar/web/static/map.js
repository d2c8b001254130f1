/* The map that can be moved, in the place of the drawn one. It fetches positions from this app only; the list of units
   beside it holds the same for who uses no pointer. */
"use strict";
(() => {
  const figure = document.getElementById("ground");
  if (!figure || !window.L) return;
  const token = (name) => getComputedStyle(document.documentElement).getPropertyValue(name).trim();
  const LINES = {
    water: { color: "--soft", weight: 4 },
    trail: { color: "--bark", weight: 3, dashArray: "1 7", lineCap: "round" },
    keep: { color: "--bark", weight: 2.5 },
    neighbour: { color: "--pen", weight: 2, dashArray: "8 5" },
    power: { color: "--ink", weight: 2, dashArray: "14 4 2 4" },
    road: { color: "--ink", weight: 4 },
    boundary: { color: "--ink", weight: 1.5, dashArray: "3 6" },
  };
  const OFFS = [0, 6, -6, 12, -12, 18, -18, 24, -24, 30, -30, 36, -36, 48, -48];
  const wide = figure.clientWidth < 500 ? 16 : 24; /* of a mark */
  const OTHER = { color: "--ink", weight: 2 };
  let chosen = null;

  function look(about, over) {
    if (about.kind !== "unit") {
      const line = LINES[about.kind] ?? OTHER;
      return { ...line, color: token(line.color), fill: false };
    }
    const weight = about.key === chosen ? 5 : over ? 3.5 : 2;
    return { color: token("--leaf"), weight, fillColor: token("--wash"), fillOpacity: 1 };
  }

  function spot(feature, at) {
    const icon = L.divIcon({
      className: `mark ${feature.properties.kind}`,
      html: `<svg width="${wide}" height="${wide}" aria-hidden="true"><use href="#mark-${feature.properties.kind}"/></svg>`,
      iconSize: [wide, wide],
    });
    return L.marker(at, { icon, keyboard: false });
  }

  function choose(key) {
    const link = document.querySelector(`a[data-unit="${CSS.escape(key)}"]`);
    if (!window.htmx) { location.assign(link.href); return; }
    chosen = key;
    redraw();
    window.htmx.ajax("GET", link.getAttribute("href"), { target: "#chosen", select: "#facts", swap: "innerHTML" })
      .then(() => document.querySelector("#chosen h2").scrollIntoView({ block: "nearest" }));
  }

  let shapes = null;
  function redraw() {
    shapes.eachLayer((one) => one.setStyle?.(look(one.feature.properties, false)));
  }

  function named(feature, layer) {
    const about = feature.properties;
    const words = document.createElement("span");
    if (about.kind === "unit") {
      words.textContent = about.open ? `${about.name}: ${about.open} to find out` : about.name;
      layer.on("click", () => choose(about.key));
      layer.on("mouseover", () => layer.setStyle(look(about, true)));
      layer.on("mouseout", () => layer.setStyle(look(about, false)));
      layer.bindTooltip(about.name, { permanent: true, direction: "center", className: "unit-name" });
    } else {
      words.textContent = about.own || about.kind === "neighbour" ? about.name : `${about.name} (not ours)`;
      layer.bindTooltip(words, { sticky: true, className: "place-name" });
    }
  }

  /* A name stands in the middle of its unit, or as much above or beneath as keeps it off the marks */
  function placeNames(map) {
    const marks = [];
    shapes.eachLayer((one) => {
      const { type } = one.feature.geometry;
      if (one.feature.properties.kind === "unit" || type === "LineString") return;
      marks.push(map.latLngToLayerPoint(type === "Point" ? one.getLatLng() : one.getBounds().getCenter()));
    });
    shapes.eachLayer((one) => {
      if (one.feature.properties.kind !== "unit") return;
      const name = one.getTooltip();
      const at = map.latLngToLayerPoint(one.getCenter());
      const half = (name.getElement()?.offsetWidth ?? 0) / 2 + 12;
      const top = map.latLngToLayerPoint(one.getBounds().getNorthWest()).y + 12;
      const foot = map.latLngToLayerPoint(one.getBounds().getSouthEast()).y - 12;
      const near = (mark, y) => Math.abs(mark.x - at.x) < half && Math.abs(mark.y - y) < wide / 2 + 8;
      const free = (y) => y > top && y < foot && !marks.some((mark) => near(mark, y));
      const off = OFFS.find((by) => free(at.y + by));
      name.options.offset = L.point(0, off ?? 0);
      name.update();
    });
  }

  function draw(places) {
    const size = figure.querySelector("svg").viewBox.baseVal;
    const box = document.createElement("div");
    box.className = "moved";
    box.style.aspectRatio = `${size.width} / ${size.height}`;
    figure.prepend(box);
    figure.classList.add("live");
    const coarse = matchMedia("(pointer: coarse)").matches;
    const map = L.map(box, {
      preferCanvas: true, renderer: L.canvas({ tolerance: 6 }), attributionControl: false, scrollWheelZoom: false,
      dragging: !coarse, zoomSnap: 0.25, zoomAnimation: !matchMedia("(prefers-reduced-motion: reduce)").matches,
    });
    box.setAttribute("role", "application");
    box.setAttribute("aria-label", figure.dataset.name);
    shapes = L.geoJSON(places, { style: (one) => look(one.properties, false), pointToLayer: spot, onEachFeature: named });
    map.fitBounds(shapes.getBounds(), { paddingTopLeft: [16, 16], paddingBottomRight: [16, 44] });
    shapes.addTo(map);
    L.control.scale({ maxWidth: 160 }).addTo(map);
    placeNames(map);
    map.on("zoomend", () => placeNames(map));
    document.fonts.ready.then(() => placeNames(map));
    matchMedia("(prefers-color-scheme: dark)").addEventListener("change", redraw);
    document.documentElement.classList.add("has-map");
  }

  fetch(figure.dataset.from, { headers: { accept: "application/json" } })
    .then((answer) => (answer.ok ? answer.json() : Promise.reject(answer.status)))
    .then(draw)
    .catch(() => figure.classList.remove("live")); /* the drawn map stays */
})();
