// A form that answers as it is filled in: the same address as its button, one step back for each
// change. Without this script the button does the same.
const form = document.querySelector('form[data-live]');
const address = () => location.pathname + '?' + new URLSearchParams(new FormData(form));
let asked = 0;

// Answers to what is no longer asked may not stay where they would be read as answers to it.
function unanswered() {
  const said = document.createElement('p');
  said.setAttribute('role', 'alert');
  said.textContent = 'No answer: the desk does not answer, or you have to come in again.';
  document.getElementById('answers').replaceChildren(said);
}

async function show(at) {
  const mine = ++asked;
  const answer = await fetch(at, { headers: { Accept: 'text/html' } }).catch(() => null);
  if (mine !== asked) return;
  if (!answer || !answer.ok || answer.redirected) return unanswered();
  const page = new DOMParser().parseFromString(await answer.text(), 'text/html');
  for (const field of page.querySelectorAll('form[data-live] [name]')) {
    const here = form.elements[field.name];
    if (here !== document.activeElement) here.value = field.value;
  }
  document.getElementById('answers').replaceWith(page.getElementById('answers'));
}

function changed() {
  history.pushState(null, '', address());
  show(location.href);
}

let soon = 0;
form.addEventListener('input', () => {
  clearTimeout(soon);
  soon = setTimeout(changed, 250);
});
form.addEventListener('submit', (e) => {
  e.preventDefault();
  clearTimeout(soon);
  changed();
});
addEventListener('popstate', () => location.reload());
