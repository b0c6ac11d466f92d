namespace KitWorks.Drawings.Frames;

/// <summary>What a reader must be told about a picture, under its legend.</summary>
static class Notes
{
    public static IEnumerable<string> For(Scene scene, Codes codes, View view, int? tier)
    {
        if (view == View.Spread) yield return "The walls are folded outwards so that every strut shows: lengths are not to scale, colours and codes are true.";
        var missing = codes.Wanted - codes.Placed.Count;
        if (missing > 0 && codes.Placed.Count == 0) yield return "Struts are too close here for codes: go by colour and pattern.";
        else if (missing > 0) yield return $"{(missing == 1 ? "1 code is" : $"{missing} codes are")} left out for want of room: go by colour and pattern there.";
        if (scene.Openings.Length > 0) yield return "A dark line beside a strut, at an opening: two of these struts lie side by side there, and both are counted.";
        if (scene.Struts.Any(s => s.Weight == Weight.Hidden) && tier is null) yield return "Pale lines are on the far side.";
    }
}
