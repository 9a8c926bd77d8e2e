(function () {
  'use strict';
  document.querySelectorAll('table.sortable').forEach(function (table) {
    var body = table.tBodies[0];
    var original = Array.prototype.slice.call(body.rows);
    var shown = original;
    var put = function (rows) { rows.forEach(function (row) { body.appendChild(row); }); };
    Array.prototype.forEach.call(table.tHead.rows[0].cells, function (head, column) {
      var button = document.createElement('button');
      button.type = 'button';
      button.textContent = head.textContent;
      head.textContent = '';
      head.appendChild(button);
      button.addEventListener('click', function () {
        var was = head.getAttribute('aria-sort');
        Array.prototype.forEach.call(table.tHead.rows[0].cells, function (other) { other.removeAttribute('aria-sort'); });
        if (was === 'descending') {
          shown = original;
          put(shown);
          return;
        }
        var sign = was === 'ascending' ? -1 : 1;
        var numeric = head.dataset.sort === 'number';
        var value = function (row) {
          var cell = row.cells[column];
          return numeric ? cell.dataset.v : cell.textContent.trim();
        };
        shown = original.map(function (row, index) { return { row: row, index: index, value: value(row) }; }).sort(function (a, b) {
          var order;
          if (numeric) {
            var x = a.value === '' ? NaN : Number(a.value === '∞' ? Infinity : a.value), y = b.value === '' ? NaN : Number(b.value === '∞' ? Infinity : b.value);
            if (isNaN(x) || isNaN(y)) { return (isNaN(x) ? 1 : 0) - (isNaN(y) ? 1 : 0) || a.index - b.index; }
            order = x < y ? -1 : x > y ? 1 : 0;
          } else {
            order = a.value < b.value ? -1 : a.value > b.value ? 1 : 0;
          }
          return sign * order || a.index - b.index;
        }).map(function (item) { return item.row; });
        put(shown);
        head.setAttribute('aria-sort', sign > 0 ? 'ascending' : 'descending');
      });
    });
    // Paper keeps the order of the review, whatever the screen shows.
    window.addEventListener('beforeprint', function () { put(original); });
    window.addEventListener('afterprint', function () { put(shown); });
  });
  var closed = [];
  window.addEventListener('beforeprint', function () {
    closed = Array.prototype.slice.call(document.querySelectorAll('details:not([open])'));
    closed.forEach(function (fold) { fold.open = true; });
  });
  window.addEventListener('afterprint', function () {
    closed.forEach(function (fold) { fold.open = false; });
    closed = [];
  });
  var unfold = function () {
    var target = location.hash.length > 1 && document.getElementById(location.hash.slice(1));
    if (target) {
      for (var node = target; node; node = node.parentElement) {
        if (node.tagName === 'DETAILS') { node.open = true; }
      }
      target.scrollIntoView();
    }
  };
  window.addEventListener('hashchange', unfold);
  unfold();
})();
