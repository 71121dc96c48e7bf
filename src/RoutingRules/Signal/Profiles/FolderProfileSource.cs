#pragma warning disable RS0030 // Profiles lie in a folder that somebody named.
using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Signal.Profiles;

/// <summary>Profiles from the <c>*.profile.json</c> files of a folder and its subfolders, read once when the source is made.</summary>
/// <remarks>A file whose document cannot be read is not dropped in silence: its problem is in <see cref="Problems"/>.</remarks>
public sealed class FolderProfileSource : ProfileSource
{
    private readonly Dictionary<Id<DeviceProfile>, byte[]> documents = [];

    /// <summary>Reads a folder.</summary>
    /// <param name="folder">The folder.</param>
    /// <exception cref="DirectoryNotFoundException">The folder does not exist.</exception>
    /// <exception cref="IOException">A file cannot be read.</exception>
    public FolderProfileSource(string folder)
    {
        ArgumentException.ThrowIfNullOrEmpty(folder);
        Name = folder;
        var problems = new List<string>();
        foreach (var path in Directory.EnumerateFiles(folder, "*.profile.json", SearchOption.AllDirectories).Order(StringComparer.Ordinal))
        {
            var bytes = File.ReadAllBytes(path);
            var result = Documents.ProfileReader.Read(bytes);
            if (!result.IsUsable)
            {
                problems.AddRange(result.Findings.Select(finding => $"{path}: {finding.Message}"));
            }
            else if (!documents.TryAdd(result.Value!.Id, bytes))
            {
                problems.Add($"{path}: profile '{result.Value.Id}' stands in another file of the folder already; that one counts.");
            }
        }

        Problems = problems;
        Ids = [.. documents.Keys.Order()];
    }

    /// <inheritdoc/>
    public override string Name { get; }

    /// <inheritdoc/>
    public override IReadOnlyList<Id<DeviceProfile>> Ids { get; }

    /// <summary>What is wrong with files of the folder, in path order; empty when nothing is.</summary>
    public IReadOnlyList<string> Problems { get; }

    /// <inheritdoc/>
    public override bool TryFind(Id<DeviceProfile> id, out ReadOnlyMemory<byte> json)
    {
        var isHeld = documents.TryGetValue(id, out var bytes);
        json = bytes;
        return isHeld;
    }
}
