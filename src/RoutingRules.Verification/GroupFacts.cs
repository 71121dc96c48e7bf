using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Verification;

/// <summary>A port group of one device as the verifier sees it.</summary>
internal sealed class GroupFacts(DeviceFacts device, int index, PortGroup model, int count)
{
    private readonly Dictionary<int, Point> factory = [];

    public DeviceFacts Device { get; } = device;

    /// <summary>Position in the profile.</summary>
    public int Index { get; } = index;

    public PortGroup Model { get; } = model;

    public PortKind Kind => Model.Kind;

    public int Count { get; } = count;

    public int BlockSize { get; } = model.BlockSize ?? 1;

    /// <summary>The last slot of the last whole block; what lies beyond cannot be used.</summary>
    public int LastWhole => Count / BlockSize * BlockSize;

    /// <summary>The group whose position i always feeds position i here; null when nothing is fixed.</summary>
    public GroupFacts? FixedFrom { get; private set; }

    /// <summary>Whether sinks of a fixed group can be set to nothing.</summary>
    public bool IsClearable { get; private set; }

    /// <summary>The group that reaches this one through processing or straight wire.</summary>
    public GroupFacts? ThroughFrom { get; private set; }

    /// <summary>True for the output of a selector, which is a source itself.</summary>
    public bool IsSelect { get; private set; }

    /// <summary>Points that always carry their own source and cannot be silenced.</summary>
    public bool IsRigid => FixedFrom is not null && !IsClearable;

    public int BlockOf(int number) => (number - 1) / BlockSize;

    public Point At(int number) => new(Device.Model.Id, Model.Id, number);

    public Point? FactorySource(int number) => factory.TryGetValue(number, out var source) ? source : null;

    /// <summary>Takes over what the profile says about this group as a sink.</summary>
    public void Connect(DeviceProfile profile)
    {
        foreach (var entry in profile.Routing)
        {
            if (entry.To == Model.Id && entry.Mode == RoutingMode.Fixed && FixedFrom is null)
            {
                FixedFrom = Device.Group(entry.From);
                IsClearable = entry.Clearable;
            }
        }

        foreach (var entry in profile.Through)
        {
            if (entry.To != Model.Id)
                continue;

            if (entry.Kind == ThroughKind.Select)
                IsSelect = true;
            else
                ThroughFrom ??= Device.Group(entry.From);
        }

        foreach (var route in profile.FactoryRoutes)
        {
            if (route.To.Group != Model.Id || route.To.Width != route.From.Width || Device.Group(route.From.Group) is not { } from)
                continue;

            // One that is wider than a group is left out, and one that meets a sink with a source ends there.
            for (var i = 0; route.From.Last <= from.Count && route.To.Last <= Count && i < route.To.Width; i++)
            {
                if (!factory.TryAdd(route.To.First + i, from.At(route.From.First + i)))
                    break;
            }
        }
    }
}
