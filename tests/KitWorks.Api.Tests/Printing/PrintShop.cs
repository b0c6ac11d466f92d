using System.Text.Json;

namespace KitWorks.Api.Tests.Printing;

/// <summary>What the tests of printing do at the bench.</summary>
static class PrintShop
{
    public static Task<OpenShop> Open(Uri printer, params (string, string?)[] more) => OpenShop.Open(settings: [.. Settings(printer), .. more]);

    public static (string, string?)[] Settings(Uri printer) =>
        [("Printers:0:Name", "bench"), ("Printers:0:Uri", printer.ToString()), ("Printing:BeatSeconds", "0.05")];

    public static Task<Answer> Print(this Caller caller, JsonElement order, string what = "labels", int? tier = null, string printer = "bench", string? once = null) =>
        caller.Post("/api/print-jobs", new { orderId = order.Id(), what, tier, printer }, once);

    public static async Task<JsonElement> Job(this Caller caller, JsonElement job) => (await caller.Get($"/api/print-jobs/{job.Id()}")).Ok;

    /// <summary>The job as soon as it stands so.</summary>
    public static async Task<JsonElement> JobThat(this Caller caller, JsonElement job, Func<JsonElement, bool> stands)
    {
        var now = job;
        try
        {
            await Patience.Until(async () => stands(now = await caller.Job(job)), "the print job");
        }
        catch (Xunit.Sdk.XunitException)
        {
            Assert.Fail($"The print job did not get there: {now}");
        }
        return now;
    }

    public static Task<JsonElement> JobIs(this Caller caller, JsonElement job, string status) => caller.JobThat(job, j => j.Text("status") == status);

    public static bool HeldUpBy(this JsonElement job, string reason) => job.Texts("reasons", "code").Contains(reason);
}
