// What is typed into a form and not sent yet outlives a reload: kept by this window alone, forgotten once it is sent.
// The tally keeps its own table (grid.js).
"use strict";
(() => {
  const picked = (one) => one.type === "radio" || one.type === "checkbox";
  const fields = (form) => [...form.elements].filter((one) => one.name && one.type !== "hidden" && one.tagName !== "BUTTON");
  const place = (form) => {
    const about = [...form.querySelectorAll("input[type=hidden]")].map((one) => one.value);
    return ["typed", location.pathname + location.search, [...document.forms].indexOf(form), ...about].join(" ");
  };
  const kept = (form) => {
    try { return JSON.parse(sessionStorage.getItem(place(form))); } catch { return null; }
  };

  for (const form of document.forms) {
    const said = form.id === "tally" ? null : kept(form);
    const all = fields(form);
    if (!said || said.length !== all.length) continue;
    all.forEach((one, at) => { if (picked(one)) one.checked = said[at]; else one.value = said[at]; });
    for (let above = form.closest("details"); above; above = above.parentElement.closest("details")) above.open = true;
  }
  document.addEventListener("input", (event) => {
    const form = event.target.form;
    if (!form || form.id === "tally") return;
    const said = fields(form).map((one) => (picked(one) ? one.checked : one.value));
    try { sessionStorage.setItem(place(form), JSON.stringify(said)); } catch { /* a window that may keep nothing */ }
  });
  document.addEventListener("submit", (event) => {
    try { sessionStorage.removeItem(place(event.target)); } catch { /* as above */ }
  }, true);
})();
