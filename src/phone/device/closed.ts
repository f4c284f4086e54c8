/**
 * Takes away the one way out of the page that its policy leaves open. A policy can forbid WebRTC
 * (`webrtc 'block'`, CSP level 3), but Chromium does not know that word and complains of it.
 */
for (const name of ["RTCPeerConnection", "webkitRTCPeerConnection"]) {
  Reflect.deleteProperty(globalThis, name);
}
