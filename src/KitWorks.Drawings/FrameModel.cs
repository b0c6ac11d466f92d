using KitWorks.Drawings.Frames;
using KitWorks.Drawings.Models;
using KitWorks.Geometry;
using KitWorks.Kits;
using SharpGLTF.Schema2;

namespace KitWorks.Drawings;

/// <summary>What a model of a frame shows.</summary>
public sealed record ModelOptions
{
    /// <summary>The struts' outer diameter; null for a thirtieth of the shortest spacing.</summary>
    public Length? StrutDiameter { get; init; }

    /// <summary>Whether the cover is shown, as translucent panels.</summary>
    public bool WithCover { get; init; }
}

/// <summary>Makes a frame into a glTF 2.0 model for any viewer: metres, y up, one node a strut type, one for the hubs.</summary>
public static class FrameModel
{
    /// <summary>The model as a binary glTF file (.glb). The same frame gives the same bytes.</summary>
    /// <param name="frame">The frame.</param>
    /// <param name="strutTypes">The strut types of its kit; without them, as in <see cref="FrameDrawing.Draw"/>.</param>
    /// <param name="options">What to show.</param>
    /// <exception cref="ArgumentException">The strut types are not those of the frame.</exception>
    public static byte[] ToGlb(Frame frame, IReadOnlyList<StrutType>? strutTypes = null, ModelOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(frame);
        options ??= new();
        var marks = Marks.For(frame, strutTypes);
        var radius = (options.StrutDiameter?.Millimetres ?? frame.Families[0].SpacingMm / 30) / 2;
        if (radius <= 0) throw new ArgumentException("A strut has a diameter above zero.", nameof(options));

        var model = ModelRoot.CreateModel();
        var scene = model.UseScene(ShelterName.Of(frame.Shelter));
        foreach (var type in frame.Struts.GroupBy(marks.IndexOf).OrderBy(g => g.Key))
        {
            var mesh = new Mesh3();
            foreach (var s in type) mesh.AddTube(frame.Nodes[s.From].Position, frame.Nodes[s.To].Position, radius);
            var mark = marks.All[type.Key];
            Gltf.Add(model, scene, $"{mark.Code} {mark.Tag.Colour}", mesh, mark.Tag.Hex);
        }
        var hubs = new Mesh3();
        foreach (var n in frame.Nodes) hubs.AddBall(n.Position, radius * 1.7);
        Gltf.Add(model, scene, "Hubs", hubs, "#2B3640");
        if (options.WithCover)
        {
            var cover = new Mesh3();
            foreach (var p in frame.Panels) cover.AddTriangle(frame.Nodes[p.A].Position, frame.Nodes[p.B].Position, frame.Nodes[p.C].Position);
            Gltf.Add(model, scene, "Cover", cover, "#E8EEF2", opacity: 0.45f);
        }
        return model.WriteGLB().ToArray();
    }
}
