/** What people call the wall that a face belongs to; of a partition also which of its two faces. Joined: wall, face. */
export const wallCalled = `wall.name || iif(face.name = '', '', ', ' || face.name)`
