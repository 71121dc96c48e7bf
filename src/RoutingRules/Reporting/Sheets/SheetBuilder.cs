using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Reporting.Sheets;

/// <summary>Makes the sheets of a show. Thread safe; the result depends on nothing but its arguments.</summary>
public static class SheetBuilder
{
    /// <summary>Makes sheets of any resolved show, also of one that is not patched or has faults: what is missing is listed, not left out.</summary>
    /// <param name="show">The show.</param>
    /// <param name="options">What to make; null for all devices in the house view.</param>
    /// <exception cref="ArgumentNullException"><paramref name="show"/> is null.</exception>
    /// <exception cref="ArgumentException">The options name a device that is not in the rig, or an <c>extensions</c> member of the show is not a JSON object.</exception>
    public static Sheet Build(ResolvedShow show, SheetOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(show);
        options ??= new SheetOptions();
        var devices = Selected(show, options.Devices);
        var facts = new SheetFacts(show, options.View);
        var selection = new SheetSelection(facts, options.Devices.IsEmpty ? null : devices);
        var deviceBuilder = new DeviceSheetBuilder(facts);
        var lines = new LineCheckBuilder(facts, selection);
        return new Sheet
        {
            Head = new SheetHead
            {
                Title = show.Document.Title,
                Venue = show.Document.Venue,
                Date = show.Document.Date,
                Revision = show.Document.Revision,
                Code = ContentCode.Of(show.Document),
                View = options.View,
                Selection = options.Devices.IsEmpty ? [] : devices.Select(device => device.DisplayName).ToValueList(),
            },
            Gaps = new GapBuilder(facts).Build(),
            Devices = devices.Select(deviceBuilder.Build).ToValueList(),
            LineChecks = lines.InChannelOrder(),
            Walk = lines.InWalkingOrder(),
            OutputChecks = new OutputCheckBuilder(facts, selection).Build(),
            Cautions = SheetWords.Cautions,
        };
    }

    private static DeviceNode[] Selected(ResolvedShow show, ValueList<Id<Device>> wanted)
    {
        foreach (var id in wanted)
        {
            if (show.Graph.Device(id) is null)
            {
                throw new ArgumentException($"The rig has no device '{id}'; it has {string.Join(", ", show.Devices.Select(device => device.Id))}.", nameof(wanted));
            }
        }

        return wanted.IsEmpty ? [.. show.Devices] : [.. show.Devices.Where(device => wanted.Contains(device.Id))];
    }
}
