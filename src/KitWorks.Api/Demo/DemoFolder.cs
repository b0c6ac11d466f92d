using KitWorks.Api.Hosting;

namespace KitWorks.Api.Demo;

/// <summary>The folder that the demo writes into and clears. It clears only what carries its mark.</summary>
static class DemoFolder
{
    const string Mark = ".kitworks-demo";

    /// <summary>An empty demo folder: made anew, or cleared if an earlier demo made it.</summary>
    /// <exception cref="SettingException">The folder holds something that no demo made.</exception>
    public static DirectoryInfo Clean(string path)
    {
        var folder = new DirectoryInfo(Path.GetFullPath(path));
        if (File.Exists(folder.FullName)) throw new SettingException($"{folder.FullName} is a file; nothing was touched. Name a folder with --data.");
        var mark = Path.Combine(folder.FullName, Mark);
        if (folder.Exists && folder.EnumerateFileSystemInfos().Any() && !File.Exists(mark))
            throw new SettingException($"{folder.FullName} holds files that are not a demo's; nothing was touched. Name another folder with --data.");
        folder.Create();
        foreach (var file in folder.EnumerateFiles("kitworks.db*")) file.Delete();
        foreach (var order in folder.EnumerateDirectories("order-*")) order.Delete(recursive: true);
        File.WriteAllText(mark, "Made by the demo; the next demo clears the database and the orders here.\n");
        return folder;
    }
}
