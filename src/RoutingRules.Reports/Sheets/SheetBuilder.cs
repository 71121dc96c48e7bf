using RoutingRules.Model;
using RoutingRules.Reports.Sheets.Contents;
using RoutingRules.Reports.Sheets.Flow;
using RoutingRules.Reports.Sheets.Pages;
using RoutingRules.Resolving;

namespace RoutingRules.Reports.Sheets;

/// <summary>Makes the sheets of a show. Thread safe; the result depends on nothing but its arguments.</summary>
public static class SheetBuilder
{
    /// <summary>Makes sheets of any resolved show, also of one that is not patched or has faults: what is missing is listed, not left out.</summary>
    /// <param name="show">The show.</param>
    /// <param name="options">What to make; null for all devices in the house view.</param>
    /// <exception cref="ArgumentNullException"><paramref name="show"/> is null.</exception>
    /// <exception cref="ArgumentException">The options name a device or zone that is not in the rig, or a zone or side with no device, or an <c>extensions</c>
    /// member of a show is not a JSON object.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The number of blank rows is not from 0 to 40.</exception>
    public static Sheet Build(ResolvedShow show, SheetOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(show);
        options ??= new SheetOptions();
        if (options.BlankRows is < 0 or > MaxBlankRows)
        {
            throw new ArgumentOutOfRangeException(nameof(options), options.BlankRows, "Blank rows go from 0 to 40.");
        }

        var devices = SheetDevices.Select(show, options);
        var sheet = Build(show, options, devices);
        if (options.Since is not { } since)
        {
            return sheet;
        }

        var before = Build(since, new SheetOptions { View = options.View }, null);
        return SheetChanges.Mark(sheet, before, devices is null) with
        {
            Head = sheet.Head with
            {
                Since = new SheetSince
                {
                    Revision = before.Head.Revision,
                    Date = before.Head.Date,
                    Code = before.Head.Code,
                },
            },
        };
    }

    private const int MaxBlankRows = 40;

    private static Sheet Build(ResolvedShow show, SheetOptions options, DeviceNode[]? devices)
    {
        var facts = new SheetFacts(show, options.View);
        var selection = new SheetSelection(facts, devices);
        var flows = new FlowBuilder(facts);
        var deviceBuilder = new DeviceSheetBuilder(facts, flows);
        var lines = new LineCheckBuilder(facts, selection);
        var outputs = new OutputCheckBuilder(facts, selection);
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
                Selection = devices is null ? [] : devices.Select(device => device.DisplayName).ToValueList(),
            },
            Gaps = new GapBuilder(facts).Build(),
            Flows = flows.Overall(selection),
            Devices = (devices ?? show.Devices).Select(deviceBuilder.Build).ToValueList(),
            LineChecks = lines.InChannelOrder(),
            Walk = lines.InWalkingOrder(),
            OutputChecks = outputs.Build(),
            Packs = outputs.Packs(),
            Networks = new NetworkSheetBuilder(facts, selection).Build(),
            Latencies = new LatencyBuilder(facts, selection).Build(),
            Parts = (options.Parts.IsEmpty ? Enum.GetValues<SheetSection>() : [.. options.Parts.Distinct().Order()]).ToValueList(),
            HasAllDevices = devices is not null || options.HasDrawings || options.Parts.Contains(SheetSection.Devices),
            BlankRows = options.BlankRows,
            IsLargeType = options.IsLargeType,
            HasDrawings = options.HasDrawings,
            Cautions = SheetWords.Cautions,
        };
    }
}
