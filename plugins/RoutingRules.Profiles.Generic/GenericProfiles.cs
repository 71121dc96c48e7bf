using System.Reflection;
using RoutingRules.Model;

namespace RoutingRules.Profiles.Generic;

/// <summary>The generic device profiles of this package: invented devices of usual sizes, none of them a real product.</summary>
/// <remarks>
/// Ids are <c>generic/</c> and the first part of the name of the file in the folder <c>profiles</c>.
/// Thread safe; each call of <see cref="TryFind"/> gives its own copy.
/// </remarks>
public sealed class GenericProfiles : ProfileSource
{
    private static readonly Assembly Package = typeof(GenericProfiles).Assembly;

    private readonly Id<DeviceProfile>[] ids;

    /// <summary>Lists the profiles of the package; none is read yet.</summary>
    public GenericProfiles()
    {
        ids = Array.ConvertAll(Package.GetManifestResourceNames(), name => new Id<DeviceProfile>(name));
        Array.Sort(ids);
    }

    /// <inheritdoc/>
    public override string Name => "generic profiles";

    /// <inheritdoc/>
    public override IReadOnlyList<Id<DeviceProfile>> Ids => ids.AsReadOnly();

    /// <inheritdoc/>
    public override bool TryFind(Id<DeviceProfile> id, out ReadOnlyMemory<byte> json)
    {
        json = default;
        if (Array.BinarySearch(ids, id) < 0)
        {
            return false;
        }

        using var resource = Package.GetManifestResourceStream(id.Value)!;
        var bytes = new byte[resource.Length];
        resource.ReadExactly(bytes);
        json = bytes;
        return true;
    }
}
