using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Testing;

/// <summary>Lays audio cables in a rig.</summary>
internal sealed class CableMaker(Dice dice, RigView rig)
{
    private readonly HashSet<Point> taken = [];

    /// <summary>
    /// Cables of equal width between free points. Boxes and consoles feed processors, amplifiers and racks; processors feed later processors and
    /// amplifiers; wireless racks feed boxes, consoles, splits and selectors: so no signal ever comes back to where it was.
    /// </summary>
    public ValueList<Cable> Valid()
    {
        var cables = new List<Cable>();
        var outputs = rig.OfKind(PortKind.Output).ToArray();
        var inputs = rig.OfKind(PortKind.Input).ToArray();
        foreach (var output in outputs)
        {
            var suitable = inputs
                .Where(input => Rank(input) > Rank(output) || (Rank(input) == Rank(output) && Rank(output) == 2 && Position(input) > Position(output)))
                .ToArray();
            for (var tries = dice.Roll(0, 2); tries > 0 && suitable.Length > 0; tries--)
            {
                Lay(cables, output, dice.Pick(suitable));
            }
        }

        return cables.ToValueList();
    }

    /// <summary>Cables as people get them wrong: to the same input twice, back to where the signal came from, of unequal width, on one device.</summary>
    public ValueList<Cable> Messy()
    {
        var cables = Circle();
        var sockets = rig.OfKind(PortKind.Output, PortKind.Input).ToArray();
        var outputs = rig.OfKind(PortKind.Output).ToArray();
        var inputs = rig.OfKind(PortKind.Input).ToArray();
        for (var count = dice.Grow(0, 6); count > 0 && outputs.Length > 0 && inputs.Length > 0; count--)
        {
            var isSound = dice.Chance(85);
            var from = isSound ? dice.Pick(outputs) : dice.Pick(sockets);
            var to = isSound ? dice.Pick(inputs) : dice.Pick(sockets);
            var width = dice.Roll(1, Math.Min(4, Math.Min(from.Count, to.Count)));
            cables.Add(new Cable { From = from.Somewhere(dice, width), To = to.Somewhere(dice, dice.Chance(95) ? width : 1) });
        }

        return cables.ToValueList();
    }

    /// <summary>Two devices that pass signal on, each feeding the other, now and then.</summary>
    private List<Cable> Circle()
    {
        var passing = rig
            .Devices.Where(entry => entry.Profile.Kind == DeviceKind.Processor || entry.Profile.Kind == DeviceKind.Amplifier)
            .Select(entry => entry.Device.Id)
            .ToArray();
        return passing.Length < 2 || dice.Chance(40) ? [] : [Single(passing[0], passing[1]), Single(passing[1], passing[0])];

        static Cable Single(Id<Device> from, Id<Device> to) => new() { From = new(from, new("out"), 1, 1), To = new(to, new("in"), 1, 1) };
    }

    private void Lay(List<Cable> cables, GroupView from, GroupView to)
    {
        var width = dice.Roll(1, Math.Min(from.Count, to.Count));
        var (source, sink) = (from.Somewhere(dice, width), to.Somewhere(dice, width));
        if (Enumerable.Range(0, width).Any(position => taken.Contains(source[position]) || taken.Contains(sink[position])))
        {
            return;
        }

        for (var position = 0; position < width; position++)
        {
            taken.Add(source[position]);
            taken.Add(sink[position]);
        }

        cables.Add(
            new Cable
            {
                From = source,
                To = sink,
                Way = dice.Chance(30) ? "loom A" : null,
            }
        );
    }

    /// <summary>How far along the signal's way a device stands.</summary>
    private static int Rank(GroupView group) =>
        group.Profile.Kind.Value switch
        {
            "receiver-rack" => 0,
            "console" or "stage-box" => 1,
            "processor" => 2,
            "split" or "selector" => 3,
            _ => 4,
        };

    private int Position(GroupView group) => rig.Devices.Select(entry => entry.Device.Id).ToList().IndexOf(group.Device.Id);
}
