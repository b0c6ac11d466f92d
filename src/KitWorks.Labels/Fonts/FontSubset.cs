using System.Runtime.InteropServices;
using SkiaSharp;

namespace KitWorks.Labels.Fonts;

/// <summary>Cuts a face down to the glyphs of one document: forty kilobytes in place of seven hundred.</summary>
static class FontSubset
{
    // hb_subset_flags_t: no hinting, keep glyph numbers, do not follow substitutions (glyphs are already shaped).
    const uint Flags = 0x1 | 0x2 | 0x200;

    const string Library = "libHarfBuzzSharp";

    /// <summary>A font file with these glyphs alone under their old numbers, or null where HarfBuzz cannot make one.</summary>
    public static SKData? Cut(Face face, IEnumerable<ushort> glyphs)
    {
        var input = hb_subset_input_create_or_fail();
        if (input == IntPtr.Zero) return null;
        try
        {
            hb_subset_input_set_flags(input, Flags);
            var set = hb_subset_input_glyph_set(input);
            foreach (var glyph in glyphs) hb_set_add(set, glyph);
            var subset = hb_subset_or_fail(face.Source.Handle, input);
            if (subset == IntPtr.Zero) return null;
            var blob = hb_face_reference_blob(subset);
            var bytes = hb_blob_get_data(blob, out var length);
            var data = SKData.CreateCopy(bytes, (ulong)length);
            hb_blob_destroy(blob);
            hb_face_destroy(subset);
            return data;
        }
        finally
        {
            hb_subset_input_destroy(input);
        }
    }

#pragma warning disable SYSLIB1054, CA5392 // The names are HarfBuzz's own, and its library is found through the package that ships it.
    [DllImport(Library)] static extern IntPtr hb_subset_input_create_or_fail();
    [DllImport(Library)] static extern void hb_subset_input_destroy(IntPtr input);
    [DllImport(Library)] static extern void hb_subset_input_set_flags(IntPtr input, uint flags);
    [DllImport(Library)] static extern IntPtr hb_subset_input_glyph_set(IntPtr input);
    [DllImport(Library)] static extern void hb_set_add(IntPtr set, uint value);
    [DllImport(Library)] static extern IntPtr hb_subset_or_fail(IntPtr face, IntPtr input);
    [DllImport(Library)] static extern IntPtr hb_face_reference_blob(IntPtr face);
    [DllImport(Library)] static extern void hb_face_destroy(IntPtr face);
    [DllImport(Library)] static extern IntPtr hb_blob_get_data(IntPtr blob, out uint length);
    [DllImport(Library)] static extern void hb_blob_destroy(IntPtr blob);
#pragma warning restore SYSLIB1054, CA5392
}
