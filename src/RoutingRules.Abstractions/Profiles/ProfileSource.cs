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

    /// <summary>The profile document as UTF-8 JSON, or null when the source does not hold the id.</summary>
    /// <param name="id">The id a device names.</param>
    public abstract ReadOnlyMemory<byte>? Find(Id<DeviceProfile> id);
}
