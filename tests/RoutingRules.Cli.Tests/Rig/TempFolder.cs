namespace RoutingRules.Cli.Tests.Rig;

/// <summary>A folder of its own for a test, gone afterwards.</summary>
internal sealed class TempFolder : IDisposable
{
    public string Root { get; } = Directory.CreateTempSubdirectory("routing-rules-test-").FullName;

    public string At(string name) => Path.Join(Root, name);

    public string Write(string name, string text)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(At(name))!);
        File.WriteAllText(At(name), text);
        return At(name);
    }

    public string Write(string name, byte[] bytes)
    {
        File.WriteAllBytes(At(name), bytes);
        return At(name);
    }

    /// <summary>Every file and folder, relative, in ordinal order.</summary>
    public string[] Names =>
        [
            .. Directory
                .EnumerateFileSystemEntries(Root, "*", SearchOption.AllDirectories)
                .Select(path => Path.GetRelativePath(Root, path))
                .Order(StringComparer.Ordinal),
        ];

    public void Dispose() => Directory.Delete(Root, recursive: true);
}
