// Keeps the row a knitter is at, on her own device: an address without a row leads back to it.
(() => {
  const strip = document.querySelector("[data-row]");
  const key = `row at ${location.pathname}`;
  try {
    if (new URLSearchParams(location.search).has("at")) {
      localStorage.setItem(key, strip.dataset.row);
    } else if ((localStorage.getItem(key) ?? "1") !== strip.dataset.row) {
      location.replace(`${location.pathname}?at=${localStorage.getItem(key)}`);
    }
  } catch {
    // Where nothing may be stored, the address alone keeps the place.
  }
})();
