using System.Globalization;
using System.Numerics;
using System.Runtime.InteropServices;
using SharpGLTF.Memory;
using SharpGLTF.Schema2;

namespace KitWorks.Drawings.Models;

/// <summary>Puts meshes into a glTF model.</summary>
static class Gltf
{
    /// <summary>Adds a mesh as a node of its own, in one plain colour.</summary>
    public static void Add(ModelRoot model, Scene scene, string name, Mesh3 mesh, string colour, float opacity = 1)
    {
        var material = model.CreateMaterial(name);
        material.InitializePBRMetallicRoughness();
        var paint = material.FindChannel("BaseColor")!.Value;
        paint.Color = new Vector4(Linear(colour, 1), Linear(colour, 3), Linear(colour, 5), opacity);
        var surface = material.FindChannel("MetallicRoughness")!.Value;
        surface.SetFactor("MetallicFactor", 0);
        surface.SetFactor("RoughnessFactor", 0.6f);
        if (opacity < 1) (material.Alpha, material.DoubleSided) = (AlphaMode.BLEND, true);

        var shape = model.CreateMesh(name);
        var primitive = shape.CreatePrimitive();
        primitive.DrawPrimitiveType = PrimitiveType.TRIANGLES;
        primitive.Material = material;
        primitive.SetVertexAccessor("POSITION", Vectors(model, mesh.Positions));
        primitive.SetVertexAccessor("NORMAL", Vectors(model, mesh.Normals));
        primitive.SetIndexAccessor(Indices(model, mesh.Indices));
        scene.CreateNode(name).Mesh = shape;
    }

    static Accessor Vectors(ModelRoot model, List<Vector3> vectors)
    {
        var bytes = MemoryMarshal.AsBytes(CollectionsMarshal.AsSpan(vectors)).ToArray();
        var accessor = model.CreateAccessor();
        accessor.SetVertexData(model.UseBufferView(bytes, target: BufferMode.ARRAY_BUFFER), 0, vectors.Count, new AttributeFormat(DimensionType.VEC3));
        return accessor;
    }

    static Accessor Indices(ModelRoot model, List<int> indices)
    {
        var bytes = MemoryMarshal.AsBytes(CollectionsMarshal.AsSpan(indices)).ToArray();
        var accessor = model.CreateAccessor();
        accessor.SetIndexData(model.UseBufferView(bytes, target: BufferMode.ELEMENT_ARRAY_BUFFER), 0, indices.Count, IndexEncodingType.UNSIGNED_INT);
        return accessor;
    }

    /// <summary>One channel of #RRGGBB as the linear light that glTF wants (IEC 61966-2-1).</summary>
    static float Linear(string colour, int at)
    {
        var c = int.Parse(colour.AsSpan(at, 2), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture) / 255.0;
        return (float)(c <= 0.04045 ? c / 12.92 : Math.Pow((c + 0.055) / 1.055, 2.4));
    }
}
