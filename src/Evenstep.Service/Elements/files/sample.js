/** Shows what a page hears of the elements in it. */

const told = document.querySelector('#told');

for (const name of ['evenstep-ready', 'evenstep-failed']) {
  document.addEventListener(name, event => {
    told.append(`${event.target.localName}: ${name.split('-')[1]}${event.detail.reason ? `, ${event.detail.reason}` : ''}; `);
  });
}
