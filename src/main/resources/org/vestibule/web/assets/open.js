// Takes the secret out of the address, where nobody else sees it, and hands it over once.
const secret = location.hash.slice(1);
if (secret) {
  history.replaceState(null, "", location.pathname + location.search);
  document.getElementById("secret").value = secret;
  document.getElementById("open").requestSubmit();
}
