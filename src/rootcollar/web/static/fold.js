// A section that is folded opens when a link leads to it, and all of them for the printer; they fold again after it.
"use strict";
(() => {
  const open = () => {
    const led = location.hash && document.getElementById(location.hash.slice(1));
    for (let one = led && led.closest("details"); one; one = one.parentElement.closest("details")) one.open = true;
    if (led) led.scrollIntoView();
  };
  let folded = [];
  addEventListener("hashchange", open);
  addEventListener("beforeprint", () => {
    folded = [...document.querySelectorAll("details.section:not([open])")];
    for (const one of folded) one.open = true;
  });
  addEventListener("afterprint", () => { for (const one of folded) one.open = false; });
  document.addEventListener("click", (event) => {
    const link = event.target.closest("a[href^='#']");
    if (link && link.getAttribute("href") === location.hash) open();
  });
  open();
})();
