/** Files and folders of the machine: the user's folders, hashes, and what can be made again. */
package tiptoe.files;
