// One drawing of the quilt: the model's paths as SVG, in one of the views. Beneath everything
// lies the ground in one colour; on it, under each seam, a shape in that one of its two
// fabrics which is painted first afterwards; then the fabrics, the last of the layout first.
// So a pixel that a seam crosses mixes the two colours of the seam and never the ground.

import { Quick } from './quick.js';

const svgNamespace = 'http://www.w3.org/2000/svg';

function element(name, parent, attributes = {}) {
  const e = document.createElementNS(svgNamespace, name);
  for (const [key, value] of Object.entries(attributes)) e.setAttribute(key, value);
  parent?.append(e);
  return e;
}

// viewColours are the colours of a fabric by view; those of colour vision are the program's own.
const gray = (f) => f.grey, own = (f) => f.colour;
const viewColours = { colour: own, line: own, value: gray, squint: gray, vanishing: gray };

// lineClasses are the classes of groups of lines that are not called as they are.
const lineClasses = { darkSeams: 'seams on-dark', darkStrips: 'strips on-dark' };

// smallestBlock is how many pixels a block takes at the least where its seams are drawn.
const smallestBlock = 12;

export class Drawing {
  constructor(model) {
    this.model = model;
    this.view = 'colour';
    this.fabrics = null; // in a colorway of its own; null for the model's
    this.seams = false;
    this.far = true; // too far away to tell seams apart
    this.svg = element('svg', null, { role: 'img', 'aria-label': 'Quilt top' });
    this.camera = element('g', this.svg);
    this.painted = element('g', this.camera);
    this.ground = element('path', this.painted);
    this.beneath = element('g', this.painted, { class: 'cloth', 'shape-rendering': 'crispEdges' }); // quicker, and covered
    this.faces = element('g', this.painted, { class: 'cloth' });
    [this.prints, this.squint, this.laid] = ['prints', 'squint', 'laid'].map((name) => element('image', this.camera, { class: name, preserveAspectRatio: 'none' }));
    this.letters = element('g', this.camera, { class: 'letters' });
    // Seams, and what comes and goes, lie in an overlay: the browser paints either without the other.
    this.overlay = element('svg', null, { class: 'overlay', 'aria-hidden': 'true' });
    this.overlayCamera = element('g', this.overlay);
    this.lines = element('g', this.overlayCamera, { class: 'lines' });
    this.marks = element('g', this.overlayCamera, { class: 'marks' });
    const path = (name) => element('path', this.overlayCamera, { class: name, d: '' });
    this.frame = path('frame'); // tells the quilt from a wall that is as dark, or as light
    this.dim = path('dim');
    this.veil = path('dim');
    this.isolated = -1;
    [this.highlightEdge, this.highlighted] = ['highlight-edge', 'highlight'].map((name) => element('g', this.overlayCamera, { class: name }));
    [this.flash, this.outlineHalo, this.outline] = ['flash', 'outline-halo', 'outline'].map(path);
    this.parts = { beneath: [], faces: [] }; // by fabric
    this.lineGroups = {};
    this.linesOf = '';
    this.quick = new Quick(this, (change) => this.drawUp(change));
  }

  // plain says whether nothing but faces is to be drawn, with seams and marks over them.
  plain() { return !['line', 'squint'].includes(this.view) && !this.laid.hasAttribute('href') && !this.prints.hasAttribute('href') && !this.svg.hasAttribute('viewBox'); }

  // update draws what changed; see Model.apply.
  update(change) {
    const { model } = this;
    if (!model.shown) return;
    const all = range(model.looseRegion() + 1);
    if (change.anew) {
      this.letters.replaceChildren();
      setAttribute(this.frame, 'd', model.ground());
    }
    this.svg.setAttribute('aria-label', `${model.title || 'Quilt top'}, ${model.quilt.size}, ${model.quilt.blocks}`);
    const few = !change.anew && !change.colours.length && change.regions.size < all.length / 4, later = this.quick.take(change, few);
    if (!change.anew || !later) this.showLines(change.anew || change.colours.length ? all : change.regions);
    else this.lines.style.display = 'none'; // they follow with the faces
    if (!later) this.drawUp(change);
    if (this.isolated >= 0) this.isolate(change.anew ? -1 : this.isolated);
  }

  // drawUp draws faces up. What an older picture had more of, fabrics and regions, is taken away; what stays is given its new paths, which
  // takes the browser less time than to make it anew.
  drawUp({ anew, colours, regions }) {
    const { model } = this, all = range(model.looseRegion() + 1);
    if (anew) {
      for (const parts of Object.values(this.parts)) {
        for (const { group } of parts.splice(model.fabrics.length)) group.remove();
        dropPaths(parts, all.length);
      }
      dropPaths(Object.values(this.lineGroups), all.length);
      this.outdated = undefined;
      setAttribute(this.ground, 'd', model.ground());
    }
    this.addGroups();
    if (anew || [...colours].length) this.fill();
    for (const r of anew ? all : regions) this.updateRegion(r);
    if (this.lines.style.display) this.showLines(all);
    this.lines.style.display = '';
    this.follow();
  }

  // wear shows a colorway of its own: its fabrics, null for those of the model.
  wear(fabrics) {
    if (this.fabrics === fabrics) return;
    this.fabrics = fabrics;
    if (this.model.shown) this.fillFabrics();
  }

  // addGroups keeps a group for each fabric: beneath in the layout's order, above against it.
  addGroups() {
    for (let f = this.parts.faces.length; f < this.model.fabrics.length; f++) {
      this.parts.beneath[f] = { group: element('g', this.beneath), paths: [] };
      this.parts.faces[f] = { group: element('g', null), paths: [] };
      this.faces.prepend(this.parts.faces[f].group);
    }
  }

  // colours are those of the fabrics in the view.
  colours() { return (this.fabrics ?? this.model.fabrics).map(viewColours[this.view] ?? ((f) => f.seen[this.view] ?? f.colour)); }

  // fillFabrics shows fabrics in their colors.
  fillFabrics() {
    if (!this.quick.take({ colours: range(this.model.fabrics.length) })) this.fill();
  }

  fill() {
    this.addGroups();
    const colours = this.colours();
    colours.forEach((colour, i) => {
      setAttribute(this.parts.beneath[i].group, 'fill', colour);
      setAttribute(this.parts.faces[i].group, 'fill', colour);
    });
    setAttribute(this.ground, 'fill', this.view === 'line' ? '#ffffff' : colours[this.model.mainFabric()]);
  }

  updateRegion(r) {
    if (this.view === 'line') {
      (this.outdated ??= new Set()).add(r);
      return;
    }
    const { faces, beneath } = this.model.paths(r);
    for (let f = 0; f < this.model.fabrics.length; f++) {
      setPath(this.parts.beneath[f], r, beneath[f]);
      setPath(this.parts.faces[f], r, faces[f]);
    }
  }

  show(view, seams) {
    const recoloured = view !== this.view;
    this.view = view;
    if (!this.plain()) this.quick.settle();
    this.seams = seams;
    if (!this.model.shown) return;
    for (const g of [this.beneath, this.faces]) g.style.display = view === 'line' ? 'none' : '';
    this.lines.classList.toggle('black', view === 'line');
    if (view !== 'line') this.letters.replaceChildren();
    if (recoloured) this.fillFabrics();
    if (view !== 'line' && this.outdated) {
      for (const r of this.outdated) this.updateRegion(r);
      this.outdated = undefined;
    }
    this.showLines([]);
  }

  // showLines draws seams, or in the line view the outlines of patches, where they are wanted.
  showLines(regions) {
    const wanted = this.view === 'line' ? 'outlines strips' : this.seams && !this.far ? 'seams strips darkSeams darkStrips' : '';
    if (wanted !== this.linesOf) {
      this.lines.replaceChildren();
      this.lineGroups = {};
      for (const name of wanted.split(' ').filter(Boolean)) {
        this.lineGroups[name] = { group: element('g', this.lines, { class: lineClasses[name] ?? name }), paths: [] };
      }
      this.linesOf = wanted;
      regions = range(this.model.looseRegion() + 1);
    }
    for (const r of regions) {
      for (const [name, part] of Object.entries(this.lineGroups)) {
        setPath(part, r, name === 'outlines' ? this.model.outlinePath(r) : this.model.seamPaths(r)[name]);
      }
    }
  }

  place(x, y, scale) {
    this.at = `translate(${x} ${y}) scale(${scale})`;
    setAttribute(this.overlayCamera, 'transform', this.at);
    if (!this.quick.move(x, y, scale)) this.follow();
    const block = this.model.quilt?.side ?? 0, strokeScale = Math.min(1, Math.max(0.35, block * scale / 40)).toFixed(2); // thinner where blocks are small
    const far = block * scale < smallestBlock;
    if (this.far !== far) {
      this.far = far;
      if (this.model.shown && !this.lines.style.display) this.showLines([]);
    }
    if (this.strokeScale !== strokeScale) this.overlay.style.setProperty('--stroke-scale', this.strokeScale = strokeScale);
  }

  // follow puts the faces where the quilt stands.
  follow() { if (this.at) setAttribute(this.camera, 'transform', this.at); }

  // showOutline draws the outline of the patch that is pointed at or held.
  showOutline(d) {
    setAttribute(this.outlineHalo, 'd', d);
    setAttribute(this.outline, 'd', d);
  }

  // showSquint lays the squint picture over the faces, or takes it away; url is null for none.
  showSquint(url) {
    this.stretch(this.squint, this.view === 'squint' ? url : null);
  }

  // showPrints lays a picture of the fabrics' prints over the faces, or takes it away; url is null for none.
  showPrints(url) {
    if (url) this.quick.settle();
    this.stretch(this.prints, url);
  }

  // lay lays a picture of other faces over those that are here, or takes it away; url is null for none.
  lay(url) {
    if (url) this.quick.settle();
    this.stretch(this.laid, url);
  }

  // stretch stretches a picture over the quilt.
  stretch(image, url) {
    if (!url) {
      image.removeAttribute('href');
      return;
    }
    setAttribute(image, 'width', String(this.model.quilt.width));
    setAttribute(image, 'height', String(this.model.quilt.height));
    setAttribute(image, 'href', url);
  }

  // markSeams marks seams: a list of { heavy, paths }, the heavy ones on top.
  markSeams(list) {
    this.marks.replaceChildren();
    for (const { heavy, paths } of list.toSorted((a, b) => a.heavy - b.heavy)) {
      for (const name of ['seam-edge', 'seam-mark']) setPaths(element('g', this.marks, { class: `${name} ${heavy ? 'heavy' : 'thin'}` }), paths);
    }
  }

  // highlight dims all but some faces, '' for none, and draws some seams boldly.
  highlight(faces, seams) {
    this.overlay.classList.toggle('highlighting', faces !== '' || seams.length > 0);
    setAttribute(this.dim, 'd', faces ? this.model.ground() + faces : '');
    setPaths(this.highlightEdge, seams);
    setPaths(this.highlighted, seams);
  }

  // isolate lays a veil over every fabric but one, so that this one keeps its color; -1 shows all.
  isolate(fabric) {
    this.isolated = fabric;
    for (const image of [this.prints, this.squint, this.laid]) image.style.display = fabric >= 0 ? 'none' : '';
    const faces = fabric < 0 || !this.model.shown ? '' : range(this.model.looseRegion() + 1).map((r) => this.model.paths(r).faces[fabric] ?? '').join('');
    setAttribute(this.veil, 'd', faces ? this.model.ground() + faces : '');
  }

  // showLetters writes each letter at its places: one text for all of one size.
  showLetters(bySize) {
    this.letters.replaceChildren();
    for (const [size, { letters, x, y }] of bySize) {
      const t = element('text', this.letters, { 'font-size': size, x: x.join(' '), y: y.join(' ') });
      t.textContent = letters.join('');
    }
  }

  // pulse shows once what has changed.
  pulse(d, fabrics) {
    this.quick.settle();
    setAttribute(this.flash, 'd', d);
    const animated = [this.flash, ...fabrics.map((f) => this.parts.faces[f]?.group).filter(Boolean)];
    for (const e of animated) {
      e.classList.remove('pulse');
      e.getBoundingClientRect(); // so that the same class begins anew
      e.classList.add('pulse');
    }
  }

  // fitForPrint lays the drawing out for paper: all of it, whatever the window shows.
  fitForPrint(on) {
    this.quick.settle();
    const { width, height } = this.model.quilt ?? { width: 1, height: 1 };
    for (const svg of [this.svg, this.overlay]) {
      if (on) svg.setAttribute('viewBox', `0 0 ${width} ${height}`);
      else svg.removeAttribute('viewBox');
    }
    if (on) this.place(0, 0, 1);
  }
}

function range(n) { return Array.from({ length: n }, (_, i) => i); }

// dropPaths takes away the paths of regions beyond so many.
function dropPaths(parts, regions) {
  for (const part of parts) for (const old of part.paths.splice(regions)) old?.e.remove();
}

function setPaths(group, paths) {
  group.replaceChildren();
  for (const d of paths) element('path', group, { d });
}

function setAttribute(e, key, value) {
  if (e.getAttribute(key) !== value) e.setAttribute(key, value);
}

// setPath gives a part its path for a region, and takes it away where there is none.
function setPath(part, region, d) {
  const old = part.paths[region];
  if (!d) {
    old?.e.remove();
    part.paths[region] = undefined;
  } else if (!old) {
    part.paths[region] = { d, e: element('path', part.group, { d }) };
  } else if (old.d !== d) {
    old.e.setAttribute('d', old.d = d);
  }
}
