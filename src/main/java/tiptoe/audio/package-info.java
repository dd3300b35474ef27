/**
 * Sound in and out: the microphone, audio files, level, noise mixing, the store of recorded
 * segments, tones and playback. Everything handed on is 16 kHz, mono, 16 bit. Knows no other stage.
 */
package tiptoe.audio;
