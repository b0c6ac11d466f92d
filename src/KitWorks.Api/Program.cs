using System.CommandLine;
using KitWorks.Api.Hosting;
using KitWorks.Api.Verbs;

var root = new RootCommand("KitWorks: from an order for a geodesic shelter to the box in which nothing is missing.")
{
    DemoVerb.Command(), ServeVerb.Command(), MigrateVerb.Command(), KeysVerb.Command(), StaffVerb.Command(), BackupVerb.Command(), VerifyLedgerVerb.Command(),
};
try
{
    return await root.Parse(args).InvokeAsync(new() { EnableDefaultExceptionHandler = false });
}
catch (Microsoft.Data.Sqlite.SqliteException wrong)
{
    await Console.Error.WriteLineAsync($"kitworks: the database cannot be used ({wrong.Message}). ConnectionStrings__KitWorks says which file it is.");
    return 1;
}
catch (Exception wrong) when (wrong is SettingException or IOException or UnauthorizedAccessException or InvalidOperationException { Source: "KitWorks.Geometry" })
{
    await Console.Error.WriteLineAsync($"kitworks: {wrong.Message}");
    return 1;
}
