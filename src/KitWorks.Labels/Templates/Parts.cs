using System.Collections.Immutable;
using SkiaSharp;

namespace KitWorks.Labels.Templates;

/// <summary>One thing that a template draws above its fixed picture. Measures are in the drawing's units.</summary>
abstract record Part(Place Place);

/// <summary>One piece of text of one style: fixed words, or a placeholder.</summary>
sealed record TextPiece(TextStyle Style, string Words, Placeholder? Placeholder);

/// <summary>How text keeps to its place.</summary>
/// <param name="Width">The width it may take; null for fixed words that need no check.</param>
/// <param name="Lines">How many lines of its full size there is room for; smaller text has more in the same room.</param>
/// <param name="Least">The smallest size it may shrink to, as a share of its own.</param>
/// <param name="WrapFirst">Whether it wraps before it shrinks, as running text does.</param>
/// <param name="Clips">Whether what still does not fit is cut off with three dots, instead of being refused.</param>
sealed record Fit(float? Width, float Lines, float Least, bool WrapFirst, bool Clips = false);

/// <summary>A line of text, or a few.</summary>
sealed record TextPart(Place Place, SKMatrix Transform, SKPoint At, ImmutableArray<TextPiece> Pieces, Fit Fit) : Part(Place);

/// <summary>A rectangle that a bar code fills.</summary>
sealed record CodePart(Place Place, SKRect Box, string Symbology, Placeholder Content) : Part(Place);

/// <summary>A rectangle that a strut with its bands is drawn in.</summary>
sealed record TagPart(Place Place, SKRect Box, Placeholder Content) : Part(Place);

/// <summary>A rectangle that a picture is fitted into.</summary>
sealed record PicturePart(Place Place, SKRect Box, Placeholder Content) : Part(Place);

/// <summary>A group drawn only when its condition says something else than nothing, 0 or false.</summary>
sealed record WhenPart(Place Place, Placeholder Condition, Layer Layer) : Part(Place);

/// <summary>A group drawn once for each item of a list, each below or beside the last.</summary>
/// <param name="Place">Where it stands.</param>
/// <param name="Item">The name that an item goes by.</param>
/// <param name="List">The list.</param>
/// <param name="Step">From one to the next.</param>
/// <param name="Room">How many there is room for.</param>
/// <param name="Flows">Whether what there is no room for goes on on the next page.</param>
/// <param name="Layer">What is drawn.</param>
sealed record EachPart(Place Place, string Item, Placeholder List, SKPoint Step, int Room, bool Flows, Layer Layer) : Part(Place);

/// <summary>A group that closes up to lists above it.</summary>
/// <param name="Place">Where it stands.</param>
/// <param name="Items">The names that the lists' items go by; the list that leaves the least room free decides.</param>
/// <param name="Layer">What is drawn.</param>
sealed record AfterPart(Place Place, ImmutableArray<string> Items, Layer Layer) : Part(Place);

/// <summary>A fixed picture with parts above it.</summary>
sealed record Layer(SKPicture? Picture, ImmutableArray<Part> Parts);
