// The picture alone on the whole screen.

const root = document.documentElement;

export function listenToFullScreen() {
  const button = document.querySelector('[data-action=fullscreen]');
  button.hidden = !document.fullscreenEnabled;
  document.addEventListener('fullscreenchange', () => {
    const on = isFullScreen();
    root.classList.toggle('full-screen', on);
    button.setAttribute('aria-pressed', String(on));
    button.title = on ? 'Leave the full screen (X or Esc)' : 'Full screen (X)';
  });
}

export const isFullScreen = () => document.fullscreenElement !== null;

export function toggleFullScreen() {
  if (isFullScreen()) leaveFullScreen();
  else if (document.fullscreenEnabled) root.requestFullscreen().catch(() => {}); // a browser may refuse
}

export function leaveFullScreen() {
  if (isFullScreen()) document.exitFullscreen().catch(() => {});
}
