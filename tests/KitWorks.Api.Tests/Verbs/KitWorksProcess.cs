using System.Diagnostics;

namespace KitWorks.Api.Tests.Verbs;

/// <summary>The built program, run as a user runs it.</summary>
static class KitWorksProcess
{
    static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);

    public static async Task<(int Exit, string Out, string Error)> Run(string folder, params string[] arguments)
    {
        using var process = Start(folder, arguments);
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        patience.CancelAfter(Patience);
        var output = process.StandardOutput.ReadToEndAsync(patience.Token);
        var error = process.StandardError.ReadToEndAsync(patience.Token);
        try
        {
            await process.WaitForExitAsync(patience.Token);
            return (process.ExitCode, await output, await error);
        }
        finally
        {
            if (!process.HasExited) process.Kill(entireProcessTree: true);
        }
    }

    public static Process Start(string folder, params string[] arguments) => Start(folder, [], arguments);

    /// <summary>As above, with settings given by the environment.</summary>
    public static Process Start(string folder, (string Key, string? Value)[] settings, params string[] arguments)
    {
        var start = new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "KitWorks.Api.dll"), .. arguments])
        {
            WorkingDirectory = folder, RedirectStandardOutput = true, RedirectStandardError = true,
        };
        foreach (var (key, value) in settings) start.Environment[key.Replace(":", "__", StringComparison.Ordinal)] = value;
        return Process.Start(start)!;
    }
}
