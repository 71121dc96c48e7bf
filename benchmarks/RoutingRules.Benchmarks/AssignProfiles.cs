using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Benchmarks;

/// <summary>The boxes and consoles of shows to assign.</summary>
internal sealed class AssignProfiles(AssignShape shape, int outputs, int boxSize)
{
    private const int BlockSize = 8;

    public DeviceProfile Box(string id, int routing)
    {
        List<PortGroup> groups =
        [
            new()
            {
                Id = new("out"),
                Kind = PortKind.Output,
                Count = boxSize,
                Level = SignalLevel.Line,
            },
            new()
            {
                Id = new("receive"),
                Kind = PortKind.Receive,
                Count = boxSize,
                BlockSize = BlockSize,
            },
            // One switch: without it a chain of boxes would end at the first.
            new()
            {
                Id = new("net"),
                Kind = PortKind.Network,
                Count = 2,
                Bridged = [new BridgedJacks { Jacks = new NumberRange(1, 2) }],
            },
        ];
        List<RoutingEntry> entries =
        [
            new()
            {
                From = new("receive"),
                To = new("out"),
                Mode = routing == 2 ? RoutingMode.Free : RoutingMode.Fixed,
                Clearable = routing == 1,
            },
        ];
        if (shape == AssignShape.Festival)
        {
            groups.Add(
                new()
                {
                    Id = new("in"),
                    Kind = PortKind.Input,
                    Count = 16,
                    Level = SignalLevel.Mic,
                    Phantom = true,
                }
            );
            groups.Add(
                new()
                {
                    Id = new("transmit"),
                    Kind = PortKind.Transmit,
                    Count = 16,
                    BlockSize = BlockSize,
                }
            );
            entries.Add(
                new()
                {
                    From = new("in"),
                    To = new("transmit"),
                    Mode = RoutingMode.Fixed,
                }
            );
        }

        return Profile(id, DeviceKind.StageBox, groups, entries);
    }

    public DeviceProfile Console(string id, int consoles, int channels, int boxes)
    {
        // Fixed boxes cannot share blocks; half as many again as outputs need leaves room to choose.
        var blocks = (outputs * 3 / 2 / BlockSize / consoles) + 1;
        List<PortGroup> groups =
        [
            new()
            {
                Id = new("bus"),
                Kind = PortKind.Source,
                Count = outputs + 2,
            },
            new()
            {
                Id = new("transmit"),
                Kind = PortKind.Transmit,
                Count = blocks * BlockSize,
                BlockSize = BlockSize,
            },
            new()
            {
                Id = new("net"),
                Kind = PortKind.Network,
                Count = 2,
            },
        ];
        List<RoutingEntry> entries =
        [
            new()
            {
                From = new("bus"),
                To = new("transmit"),
                Mode = RoutingMode.Free,
            },
        ];
        if (channels > 0)
        {
            groups.Add(
                new()
                {
                    Id = new("channel"),
                    Kind = PortKind.Sink,
                    Count = channels,
                }
            );
            groups.Add(
                new()
                {
                    Id = new("receive"),
                    Kind = PortKind.Receive,
                    Count = boxes * 16,
                    BlockSize = BlockSize,
                }
            );
            entries.Add(
                new()
                {
                    From = new("receive"),
                    To = new("channel"),
                    Mode = RoutingMode.Free,
                }
            );
        }

        return Profile(id, DeviceKind.Console, groups, entries);
    }

    private static DeviceProfile Profile(string id, DeviceKind kind, List<PortGroup> groups, List<RoutingEntry> entries) =>
        new()
        {
            Id = new("made/" + id),
            Kind = kind,
            Name = id,
            PortGroups = groups.ToValueList(),
            Routing = entries.ToValueList(),
            SampleRates = [48_000],
        };
}
