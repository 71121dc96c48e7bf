using System.Collections.Concurrent;
using RoutingRules.Documents;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Reading;
using RoutingRules.Resolving;

namespace RoutingRules.Signal.Profiles;

/// <summary>The profiles of all sources, read when first asked for and kept. Earlier sources win. Thread safe.</summary>
public sealed class ProfileLibrary
{
    private readonly Dictionary<Id<DeviceProfile>, ProfileSource> holders = [];
    private readonly ConcurrentDictionary<Id<DeviceProfile>, ReadResult<DeviceProfile>> read = new();
    private readonly ConcurrentDictionary<(Id<DeviceProfile> Id, int SampleRate), CompiledProfile> compiled = new();

    /// <summary>A library over sources.</summary>
    /// <param name="sources">The sources; of several that list an id the first counts.</param>
    /// <exception cref="ArgumentNullException"><paramref name="sources"/> is null.</exception>
    public ProfileLibrary(IEnumerable<ProfileSource> sources)
    {
        ArgumentNullException.ThrowIfNull(sources);
        foreach (var source in sources)
        {
            foreach (var id in source.Ids)
            {
                holders.TryAdd(id, source);
            }
        }

        Ids = [.. holders.Keys.Order()];
    }

    /// <summary>All profile ids, each once, in ordinal order.</summary>
    public IReadOnlyList<Id<DeviceProfile>> Ids { get; }

    /// <summary>The profile of an id with what is wrong with its document; null when no source holds it.</summary>
    public ReadResult<DeviceProfile>? Find(Id<DeviceProfile> id)
    {
        if (read.TryGetValue(id, out var known))
        {
            return known;
        }

        return holders.TryGetValue(id, out var source) && source.TryFind(id, out var json) ? read.GetOrAdd(id, ProfileReader.Read(json.Span)) : null;
    }

    internal CompiledProfile? Compiled(Id<DeviceProfile> id, int sampleRate)
    {
        if (compiled.TryGetValue((id, sampleRate), out var known))
        {
            return known;
        }

        return Find(id) is { Value: { } profile, IsUsable: true } ? compiled.GetOrAdd((id, sampleRate), ProfileCompiler.Compile(profile, sampleRate)) : null;
    }
}
