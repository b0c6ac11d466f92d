namespace KitWorks.Tests;

/// <summary>A clock that stands still until it is put forward. It starts on Monday, 2 November 2026, at 9:00 UTC.</summary>
sealed class SettableClock : TimeProvider
{
    DateTimeOffset now = new(2026, 11, 2, 9, 0, 0, TimeSpan.Zero);

    public override DateTimeOffset GetUtcNow() => now;

    public void Forward(TimeSpan by) => now += by;
}
