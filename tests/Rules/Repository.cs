namespace Rules;

/// <summary>The working tree that these tests were built from.</summary>
internal static class Repository
{
    public static string Root { get; } = Find(AppContext.BaseDirectory);

    /// <summary>Files below a folder of the tree, build output left out, as paths from the root with '/'.</summary>
    public static IEnumerable<string> Files(string folder, string pattern) =>
        Directory.EnumerateFiles(Path.Combine(Root, folder), pattern, SearchOption.AllDirectories)
            .Select(f => Path.GetRelativePath(Root, f).Replace('\\', '/'))
            .Where(f => !f.Contains("/bin/", StringComparison.Ordinal) && !f.Contains("/obj/", StringComparison.Ordinal))
            .Order(StringComparer.Ordinal);

    public static string Text(string path) => File.ReadAllText(Path.Combine(Root, path));

    private static string Find(string from)
    {
        for (var folder = new DirectoryInfo(from); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Logbook.sln")))
            {
                return folder.FullName;
            }
        }

        throw new InvalidOperationException("these tests run from inside the working tree");
    }
}
