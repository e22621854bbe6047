// Takes the code's secret out of the address and hands it over; it is kept until the page is closed,
// so that a phone that slept for long comes in again.
const KEPT = "vestibule-way";
const secret = location.hash.slice(1) || sessionStorage.getItem(KEPT) || "";
const failed = document.querySelector(".trouble");
if (location.hash) history.replaceState(null, "", location.pathname);
if (secret && !failed) {
  sessionStorage.setItem(KEPT, secret);
  document.getElementById("secret").value = secret;
  document.getElementById("open").requestSubmit();
}
if (failed) sessionStorage.removeItem(KEPT);
