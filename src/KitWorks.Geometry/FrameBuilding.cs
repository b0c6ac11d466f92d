namespace KitWorks.Geometry;

public sealed partial class Frame
{
    /// <summary>Computes the frame of a shelter.</summary>
    /// <param name="shelter">The shelter.</param>
    /// <param name="hubAllowance">The hub system's allowance, which a size by longest strut needs; zero takes the size as a spacing.</param>
    /// <returns>The frame, or a refusal whose fields are relative to the shelter.</returns>
    public static Outcome<Frame> Build(Shelter shelter, Length hubAllowance = default)
    {
        ArgumentNullException.ThrowIfNull(shelter);
        return shelter switch
        {
            Dome dome => DomeFrame.Of(dome, hubAllowance),
            Oblong oblong => OblongFrame.Of(oblong, hubAllowance),
            _ => Refusal.OfField("shelter.kind", "kind", $"There is no kind {shelter.GetType().Name}; a shelter is a dome or an oblong."),
        };
    }
}
