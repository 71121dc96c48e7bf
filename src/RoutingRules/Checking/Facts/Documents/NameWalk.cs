using RoutingRules.Model;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Facts.Documents;

/// <summary>Goes through every id that names another thing of a show, and tells those that name nothing.</summary>
internal sealed class NameWalk(RuleContext context, Action<string, string, Place> missing)
{
    private readonly NameSet zones = new(context.Rig.Zones.Count, i => context.Rig.Zones[i].Id.Value);
    private readonly NameSet clocks = new(context.Rig.Clocks.Count, i => context.Rig.Clocks[i].Id.Value);
    private readonly NameSet networks = new(context.Rig.Networks.Count, i => context.Rig.Networks[i].Id.Value);
    private readonly NameSet feeds = new(context.Feeds.Count, i => context.Feeds[i].Model.Id.Value);

    /// <summary>Calls the delegate with kind, id and place of each missing name, in a fixed order.</summary>
    public void Visit()
    {
        VisitRig(context.Rig);
        VisitIntentions();
        for (var i = 0; i < context.Streams.Count; i++)
        {
            var stream = context.Streams[i].Model;
            Look(networks, "network", stream.Network.Value, new Place(stream, "/patch/streams", i, "/network"));
        }

        for (var i = 0; i < context.InputSettings.Count; i++)
        {
            var settings = context.InputSettings[i];
            LookDevice(settings.GainOwner, new Place(settings, "/patch/inputs", i, "/gainOwner"));
            for (var k = 0; k < settings.GainFollowers.Count; k++)
            {
                LookDevice(settings.GainFollowers[k], new Place(settings, "/patch/inputs", i, "/gainFollowers", k));
            }
        }
    }

    private void VisitRig(Rig rig)
    {
        for (var i = 0; i < rig.Zones.Count; i++)
        {
            for (var k = 0; k < rig.Zones[i].Near.Count; k++)
            {
                Look(zones, "zone", rig.Zones[i].Near[k].Value, new Place(rig.Zones[i], "/rig/zones", i, "/near", k));
            }
        }

        for (var i = 0; i < rig.Clocks.Count; i++)
        {
            LookDevice(rig.Clocks[i].Leader, new Place(rig.Clocks[i], "/rig/clocks", i, "/leader"));
            LookDevice(rig.Clocks[i].Backup, new Place(rig.Clocks[i], "/rig/clocks", i, "/backup"));
        }

        for (var i = 0; i < rig.Networks.Count; i++)
        {
            Look(clocks, "clock", rig.Networks[i].Clock?.Value, new Place(rig.Networks[i], "/rig/networks", i, "/clock"));
        }

        for (var i = 0; i < rig.Devices.Count; i++)
        {
            Look(zones, "zone", rig.Devices[i].Zone?.Value, new Place(rig.Devices[i], "/rig/devices", i, "/zone"));
        }

        for (var i = 0; i < rig.Links.Count; i++)
        {
            Look(networks, "network", rig.Links[i].Network.Value, new Place(rig.Links[i], "/rig/links", i, "/network"));
        }
    }

    private void VisitIntentions()
    {
        for (var i = 0; i < context.Feeds.Count; i++)
        {
            var feed = context.Feeds[i].Model;
            for (var k = 0; k < feed.To.Count; k++)
            {
                for (var n = 0; n < feed.To[k].Devices.Count; n++)
                {
                    LookDevice(feed.To[k].Devices[n], new Place(feed, "/feeds", i, "/to", k, "/devices", n));
                }

                for (var n = 0; n < feed.To[k].Zones.Count; n++)
                {
                    Look(zones, "zone", feed.To[k].Zones[n].Value, new Place(feed, "/feeds", i, "/to", k, "/zones", n));
                }
            }

            for (var k = 0; k < feed.SeparateFrom.Count; k++)
            {
                Look(feeds, "feed", feed.SeparateFrom[k].Feed.Value, new Place(feed, "/feeds", i, "/separateFrom", k, "/feed"));
            }

            Look(feeds, "feed", feed.BackupOf?.Value, new Place(feed, "/feeds", i, "/backupOf"));
        }

        for (var i = 0; i < context.Lines.Count; i++)
        {
            var line = context.Lines[i].Model;
            for (var n = 0; n < line.From.Devices.Count; n++)
            {
                LookDevice(line.From.Devices[n], new Place(line, "/lines", i, "/from/devices", n));
            }

            for (var n = 0; n < line.From.Zones.Count; n++)
            {
                Look(zones, "zone", line.From.Zones[n].Value, new Place(line, "/lines", i, "/from/zones", n));
            }
        }
    }

    private void LookDevice(Id<Device>? id, in Place place)
    {
        if (id is { } wanted && context.Device(wanted) is null)
        {
            missing("device", wanted.Value, place);
        }
    }

    private void Look(NameSet known, string kind, string? id, in Place place)
    {
        if (id is not null && !known.Contains(id))
        {
            missing(kind, id, place);
        }
    }
}
