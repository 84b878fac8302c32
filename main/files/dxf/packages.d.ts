/** The small part of an untyped package that is used: one function an entity, from its tags to an object. */
declare module 'dxf/lib/handlers/entity/arc.js' {
  export const process: (tags: readonly (readonly [code: number, value: string | number])[]) => unknown
}
declare module 'dxf/lib/handlers/entity/insert.js' {
  export const process: (tags: readonly (readonly [code: number, value: string | number])[]) => unknown
}
declare module 'dxf/lib/handlers/entity/line.js' {
  export const process: (tags: readonly (readonly [code: number, value: string | number])[]) => unknown
}
declare module 'dxf/lib/handlers/entity/lwpolyline.js' {
  export const process: (tags: readonly (readonly [code: number, value: string | number])[]) => unknown
}
declare module 'dxf/lib/handlers/entity/mtext.js' {
  export const process: (tags: readonly (readonly [code: number, value: string | number])[]) => unknown
}
declare module 'dxf/lib/handlers/entity/polyline.js' {
  export const process: (tags: readonly (readonly [code: number, value: string | number])[]) => unknown
}
declare module 'dxf/lib/handlers/entity/text.js' {
  export const process: (tags: readonly (readonly [code: number, value: string | number])[]) => unknown
}
declare module 'dxf/lib/handlers/entity/vertex.js' {
  export const process: (tags: readonly (readonly [code: number, value: string | number])[]) => unknown
}
