using RoutingRules.Model;

namespace RoutingRules.Profiles;

/// <summary>A place device profiles come from: a folder, a package of data, a program.</summary>
/// <remarks>Implementations answer the same question in the same way for ever and from any thread; the engine keeps what it has read.</remarks>
public abstract class ProfileSource
{
    /// <summary>What people call the source, for messages.</summary>
    public abstract string Name { get; }

    /// <summary>The ids it holds, each once, in ordinal order.</summary>
    public abstract IReadOnlyList<Id<DeviceProfile>> Ids { get; }

    /// <summary>Hands out a profile document. The engine asks only for ids that <see cref="Ids"/> lists.</summary>
    /// <param name="id">The id a device names.</param>
    /// <param name="json">The document as UTF-8 JSON; empty when the source does not hold the id.</param>
    /// <returns>True when the source holds the id.</returns>
    public abstract bool TryFind(Id<DeviceProfile> id, out ReadOnlyMemory<byte> json);
}
