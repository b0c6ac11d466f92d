namespace KitWorks.Tests;

/// <summary>How long the tests under load run: short ones each time, long ones where LONG_TESTS is true.</summary>
static class Durations
{
    public static bool Long => Environment.GetEnvironmentVariable("LONG_TESTS") == "true";

    public static TimeSpan OfLoad => TimeSpan.FromSeconds(Long ? 60 : 8);

    public static int Kills => Long ? 50 : 10;
}
