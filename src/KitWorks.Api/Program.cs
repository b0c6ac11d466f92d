using System.CommandLine;
using KitWorks.Api.Hosting;
using KitWorks.Api.Http;
using KitWorks.Api.Verbs;

var root = new RootCommand("KitWorks: from an order for a geodesic shelter to the box in which nothing is missing.")
{
    DemoVerb.Command(), ServeVerb.Command(), MigrateVerb.Command(), KeysVerb.Command(), StaffVerb.Command(), BackupVerb.Command(), VerifyLedgerVerb.Command(), HealthVerb.Command(),
};
try
{
    return await root.Parse(args).InvokeAsync(new() { EnableDefaultExceptionHandler = false });
}
catch (Exception wrong) when (wrong is System.Data.Common.DbException || StorageFaults.IsUnavailable(wrong))
{
    await Console.Error.WriteLineAsync($"kitworks: the database cannot be used ({wrong.GetBaseException().Message.Split('\n')[0]}). ConnectionStrings__KitWorks says which it is.");
    return 1;
}
catch (Exception wrong) when (wrong is SettingException or IOException or UnauthorizedAccessException or InvalidOperationException { Source: "KitWorks.Geometry" })
{
    await Console.Error.WriteLineAsync($"kitworks: {wrong.Message}");
    return 1;
}
