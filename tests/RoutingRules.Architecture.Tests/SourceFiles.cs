namespace RoutingRules.Architecture.Tests;

/// <summary>The files of the working copy that the tests were built from.</summary>
internal static class SourceFiles
{
    /// <summary>The C# files below a folder, built ones left out, as paths from the root with slashes, in order.</summary>
    public static IReadOnlyList<string> CSharp(params ReadOnlySpan<string> folders)
    {
        var found = new List<string>();
        foreach (var folder in folders)
        {
            found.AddRange(
                Directory
                    .EnumerateFiles(Repository.At(folder), "*.cs", SearchOption.AllDirectories)
                    .Select(path => Path.GetRelativePath(Repository.Root, path).Replace('\\', '/'))
                    .Where(path => !path.Contains("/obj/", StringComparison.Ordinal) && !path.Contains("/bin/", StringComparison.Ordinal))
            );
        }

        found.Sort(StringComparer.Ordinal);
        return found;
    }

    public static string[] Lines(string path) => File.ReadAllLines(Repository.At(path));

    public static string Text(string path) => File.ReadAllText(Repository.At(path));
}
