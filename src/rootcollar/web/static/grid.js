/* The tally by keyboard alone, and what is typed and not saved kept while this window is open. Without it the table is a
   plain form: Tab goes from cell to cell, the buttons send. */
"use strict";
(() => {
  const form = document.getElementById("tally");
  if (!form) return;
  const body = form.querySelector("tbody");
  const stamp = form.elements.stamp;
  const place = `tally of ${form.dataset.keep}`;
  const rows = () => [...body.rows].map((row) => [...row.querySelectorAll("input, select")]);

  /* Rows */
  function addRows(count) {
    for (let left = count; left > 0; left--) {
      const at = body.rows.length;
      const row = body.rows[at - 1].cloneNode(true);
      row.removeAttribute("id");
      row.querySelector("th").textContent = at + 2;
      row.querySelectorAll(".fault").forEach((one) => one.remove());
      row.querySelectorAll("input, select").forEach((field, column) => {
        field.id = field.name = `r${at}c${column}`;
        field.setAttribute("aria-label", field.getAttribute("aria-label").replace(/\d+$/, at + 2));
        field.removeAttribute("aria-invalid");
        field.removeAttribute("aria-describedby");
        set(field, "");
      });
      body.append(row);
    }
  }
  function set(field, said) {
    if (field.tagName === "SELECT" && ![...field.options].some((one) => one.value === said)) {
      field.add(new Option(said, said));
    }
    field.value = said;
  }

  /* Keys: Enter down, Shift and Enter up, arrows between cells; in a list the up and down arrows pick, as everywhere */
  function goTo(row, column) {
    const all = rows();
    if (row < 0 || column < 0 || column >= all[0].length) return false;
    if (row >= all.length) addRows(1);
    const field = rows()[row][column];
    field.focus();
    if (field.select) field.select();
    return true;
  }
  function step(event, field) {
    const list = field.tagName === "SELECT" || field.hasAttribute("list");
    if (event.key === "Enter") return [event.shiftKey ? -1 : 1, 0];
    if (event.key === "ArrowUp" && !list) return [-1, 0];
    if (event.key === "ArrowDown" && !list) return [1, 0];
    const whole = field.tagName === "SELECT" || (field.selectionStart === 0 && field.selectionEnd === field.value.length);
    const bare = field.selectionStart === field.selectionEnd;
    if (event.key === "ArrowLeft" && (whole || (bare && field.selectionStart === 0))) return [0, -1];
    if (event.key === "ArrowRight" && (whole || (bare && field.selectionEnd === field.value.length))) return [0, 1];
    return null;
  }
  body.addEventListener("keydown", (event) => {
    const field = event.target;
    if (!field.matches("input, select") || event.isComposing || event.ctrlKey || event.altKey || event.metaKey) return;
    const by = step(event, field);
    if (!by) return;
    const row = field.closest("tr").sectionRowIndex;
    if (goTo(row + by[0], rows()[row].indexOf(field) + by[1]) || event.key === "Enter") event.preventDefault();
  });

  /* What is typed and not saved */
  const said = () => rows().map((row) => row.map((field) => field.value));
  const bare = (table) => JSON.stringify(table.filter((row) => row.some((cell) => cell.trim())));
  function keep(sent) {
    try { sessionStorage.setItem(place, JSON.stringify({ stamp: stamp.value, rows: said(), sent })); } catch { /* a window that may keep nothing */ }
  }
  function kept() {
    try { return JSON.parse(sessionStorage.getItem(place)); } catch { return null; }
  }
  function forget() {
    try { sessionStorage.removeItem(place); } catch { /* as above */ }
  }
  function putBack(before) {
    if (before.rows.length > body.rows.length) addRows(before.rows.length - body.rows.length);
    rows().forEach((row, at) => row.forEach((field, column) => set(field, before.rows[at]?.[column] ?? "")));
    stamp.value = before.stamp;
    const drop = Object.assign(document.createElement("button"), { type: "button", className: "quiet", textContent: "Drop it" });
    drop.addEventListener("click", () => { forget(); location.assign("/count"); });
    document.getElementById("put-back").replaceChildren("What you typed and did not save is here again. ", drop);
  }
  form.addEventListener("input", () => keep(false));
  form.addEventListener("submit", (event) => {
    if (event.submitter?.value !== "more") return keep(true);
    event.preventDefault();
    const first = body.rows.length;
    addRows(5);
    return goTo(first, 0);
  });
  document.querySelectorAll("[data-drop]").forEach((link) => link.addEventListener("click", forget));

  const before = kept();
  if ("typed" in form.dataset) keep(false);
  else if (before && before.sent && before.stamp !== stamp.value) forget();
  else if (before && bare(before.rows) !== bare(said())) putBack(before);
  else forget();
  if (location.search.startsWith("?kept=")) history.replaceState(null, "", location.pathname + location.hash);
  document.documentElement.classList.add("has-grid");
})();
