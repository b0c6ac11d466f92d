using System.Collections.Immutable;

namespace KitWorks.Kits.Catalog;

/// <summary>When the shop works, and how much it does in a day.</summary>
public sealed record WorkCalendar
{
    /// <summary>How far a date is looked for, in days; further off than any order is planned.</summary>
    const int Furthest = 20 * 366;

    /// <summary>The days of the week on which the shop works: one or more.</summary>
    public ImmutableArray<DayOfWeek> WorkDays { get; init; } =
        [DayOfWeek.Monday, DayOfWeek.Tuesday, DayOfWeek.Wednesday, DayOfWeek.Thursday, DayOfWeek.Friday];

    /// <summary>Holidays, and other days on which it is closed.</summary>
    public ImmutableArray<ClosedDays> Closed { get; init; } = [];

    /// <summary>Struts that the saw cuts in a day; null where it never holds an order up.</summary>
    public int? CutsPerDay { get; init; }

    /// <summary>Bundles that the bench packs in a day; null where it never holds an order up.</summary>
    public int? BundlesPerDay { get; init; }

    /// <summary>Whether the shop works on a day.</summary>
    public bool IsOpen(DateOnly day) => WorkDays.Contains(day.DayOfWeek) && Closed.All(c => day < c.From || day > c.To);

    /// <summary>The working day so many working days after a day; the day itself for none, open or not.</summary>
    /// <param name="day">The day to count from; it is not counted itself.</param>
    /// <param name="workingDays">How many; 0 or more.</param>
    /// <exception cref="InvalidOperationException">The shop is closed for the next twenty years.</exception>
    public DateOnly After(DateOnly day, int workingDays)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(workingDays);
        var last = day.AddDays(Furthest);
        while (workingDays > 0)
        {
            day = day < last ? day.AddDays(1) : throw new InvalidOperationException("The calendar has no working day left.");
            if (IsOpen(day)) workingDays--;
        }
        return day;
    }
}

/// <summary>Days on which the shop is closed.</summary>
/// <param name="From">The first.</param>
/// <param name="To">The last; the same for a single day.</param>
/// <param name="Why">A holiday's name, or the reason.</param>
public sealed record ClosedDays(DateOnly From, DateOnly To, string Why);
