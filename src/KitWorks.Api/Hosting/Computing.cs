using KitWorks.Api.Http;
using Microsoft.Extensions.Caching.Memory;

namespace KitWorks.Api.Hosting;

/// <summary>How much is computed at a time, and how much of it is kept.</summary>
static class Computing
{
    public static void AddComputing(this WebApplicationBuilder builder)
    {
        var settings = builder.Configuration;
        var atOnce = settings.Whole("Limits:ComputingAtOnce", 2 * Environment.ProcessorCount, 1, 10_000);
        var waiting = settings.Whole("Limits:ComputingWaiting", 512, 0, 100_000);
        var room = settings.Whole("Cache:MegaBytes", 64, 1, 65_536) * 1024L * 1024;
        builder.Services.AddSingleton(_ => new Turns(atOnce, waiting));
        builder.Services.AddSingleton<PureAnswers>();
        builder.Services.Configure<MemoryCacheOptions>(memory => memory.SizeLimit = room);
        // What one process has computed, the others need not.
        if (settings["Cache:Redis"] is { Length: > 0 } redis)
            builder.Services.AddStackExchangeRedisCache(shared => (shared.Configuration, shared.InstanceName) = (redis, "kitworks:"));
        builder.Services.AddHybridCache(cache =>
        {
            cache.MaximumPayloadBytes = 4 * 1024 * 1024;
            cache.DefaultEntryOptions = new() { Expiration = TimeSpan.FromHours(1), LocalCacheExpiration = TimeSpan.FromHours(1) };
        }).AddSerializer<KeptAnswer, KeptAnswer.Serializer>();
    }
}
