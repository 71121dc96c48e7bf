using RoutingRules.Model;

namespace RoutingRules.Checking.Facts.Documents;

/// <summary>Goes through every <c>extensions</c> object of a show.</summary>
internal static class ExtensionWalk
{
    /// <summary>Calls <paramref name="found"/> for each, in a fixed order, with the place of the record that holds it.</summary>
    public static void Visit(Show show, Action<ExtensionData, string> found)
    {
        One(show.Extensions, "");
        One(show.Rig.Extensions, "/rig");
        Each(show.Rig.Zones, "/rig/zones", item => item.Extensions);
        Each(show.Rig.Clocks, "/rig/clocks", item => item.Extensions);
        Each(show.Rig.Networks, "/rig/networks", item => item.Extensions);
        Each(show.Rig.Devices, "/rig/devices", item => item.Extensions);
        Each(show.Rig.Links, "/rig/links", item => item.Extensions);
        Each(show.Rig.Cables, "/rig/cables", item => item.Extensions);
        Each(show.Rig.Unavailable, "/rig/unavailable", item => item.Extensions);
        Each(show.Rig.Reserved, "/rig/reserved", item => item.Extensions);
        Each(show.Rig.Profiles, "/rig/profiles", item => item.Extensions);
        Nested(show.Rig.Profiles, "/rig/profiles", "/portGroups", profile => profile.PortGroups, group => group.Extensions);
        Each(show.Feeds, "/feeds", item => item.Extensions);
        Nested(show.Feeds, "/feeds", "/to", feed => feed.To, to => to.Extensions);
        Nested(show.Feeds, "/feeds", "/separateFrom", feed => feed.SeparateFrom, other => other.Extensions);
        Each(show.Lines, "/lines", item => item.Extensions);
        for (var i = 0; i < show.Lines.Count; i++)
        {
            One(show.Lines[i].From.Extensions, $"/lines/{i}/from");
        }

        One(show.Patch.Extensions, "/patch");
        Each(show.Patch.Streams, "/patch/streams", item => item.Extensions);
        Nested(show.Patch.Streams, "/patch/streams", "/to", stream => stream.To, receiver => receiver.Extensions);
        Each(show.Patch.Routes, "/patch/routes", item => item.Extensions);
        Each(show.Patch.Inputs, "/patch/inputs", item => item.Extensions);
        Each(show.Patch.Labels, "/patch/labels", item => item.Extensions);

        void One(ExtensionData? data, string pointer)
        {
            if (data is not null)
            {
                found(data, pointer);
            }
        }

        void Each<T>(ValueList<T> items, string list, Func<T, ExtensionData?> data)
        {
            for (var i = 0; i < items.Count; i++)
            {
                One(data(items[i]), $"{list}/{i}");
            }
        }

        void Nested<T, TPart>(ValueList<T> items, string list, string member, Func<T, ValueList<TPart>> parts, Func<TPart, ExtensionData?> data)
        {
            for (var i = 0; i < items.Count; i++)
            {
                Each(parts(items[i]), $"{list}/{i}{member}", data);
            }
        }
    }
}
