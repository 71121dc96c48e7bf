using RoutingRules.Assignment;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Verification;

public class SoundComplaintTests
{
    [Fact]
    public void An_output_sounds_only_what_a_demand_placed_there()
    {
        var stray = Scene.Paper(1).WithRoutes(Route("desk/aux/3", "desk/transmit/3"));

        stray.Complains("box-r/out/3 carries desk/aux/3, which no demand placed there; clear it or give the device another block.");
        stray.Complains("desk/transmit/3 sends desk/aux/3, which no demand takes from there; clear the slot.");
    }

    [Fact]
    public void A_second_copy_of_a_demand_is_a_stray() =>
        Scene.Paper(3).WithRoutes(Route("desk/aux/1", "desk/transmit/1")).Complains("box-r/out/1 carries desk/aux/1, which no demand placed there");

    [Fact]
    public void A_factory_leftover_does_not_travel() =>
        Scene
            .Paper(9)
            .WithPatch(patch => patch with { Routes = patch.Routes.Where(route => route.To != At("desk/transmit/3")).ToValueList() })
            .Complains("desk/transmit/3 sends desk/aux/3, which no demand takes from there; clear the slot.");

    [Fact]
    public void A_stray_the_input_had_may_stay_where_unlisted_signals_are_kept()
    {
        var had = Scene
            .Paper(1)
            .With(show => show with { Patch = show.Patch with { Routes = [.. show.Patch.Routes, Route("desk/aux/3", "desk/transmit/3")] } })
            .WithRoutes(Route("desk/aux/3", "desk/transmit/3"));

        had.Complains("box-r/out/3 carries desk/aux/3");
        (had with { Options = new AssignmentOptions { KeepUnlisted = true } }).IsValid();
    }

    [Fact]
    public void What_a_box_newly_takes_from_a_stream_that_stays_is_a_stray_even_if_it_sounded_there_before()
    {
        Route[] routes =
        [
            Route("desk/aux/1", "desk/transmit/1"),
            Route("desk/aux/2", "desk/transmit/2"),
            Route("desk/aux/1", "desk/transmit/5"),
            Route("desk/aux/2", "desk/transmit/6"),
        ];
        var staying = Stream("s1", "desk/transmit/1-4", "other/receive/1-4") with { Keep = true };
        var show = Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box), ("other", SmallProfiles.Box)) with
        {
            Feeds = [Feed("a", FeedRole.Utility, "desk/aux/2", "box/out/2")],
        };
        show = show.With([Route(null, "desk/transmit/3"), Route(null, "desk/transmit/4"), .. routes]);
        var joined = staying with { To = [.. staying.To, new() { At = At("box/receive/1-4") }] };
        var result = show.With(joined);

        new Scene { Show = result, Result = result }
            .Place("a/1", "box/out/2")
            .IsValid();
        new Scene { Show = show.With(staying, Stream("s2", "desk/transmit/5-8", "box/receive/1-4")), Result = result }
            .Place("a/1", "box/out/2")
            .ComplainsOnly("box/out/1 carries desk/aux/1, which no demand placed there; clear it or give the device another block.");
    }

    [Fact]
    public void A_reserved_output_is_silent() =>
        Scene.Paper(3).WithRoutes(Route("desk/aux/2", "desk/transmit/2")).Complains("box-r/out/2 is reserved and must be silent, but carries desk/aux/2.");

    [Fact]
    public void A_dead_output_may_sound() =>
        Scene
            .Paper(2)
            .IsValid()
            .WithRig(rig => rig with { Unavailable = [] })
            .ComplainsOnly("short/out/3 carries desk/aux/3, which no demand placed there; clear it or give the device another block.");

    [Fact]
    public void A_factory_route_to_an_output_nobody_wants_stays()
    {
        var show = Of(("desk", SmallProfiles.Console));
        var scene = new Scene { Show = show, Result = show }.IsValid();

        scene
            .WithRoutes(Route(null, "desk/out/1"))
            .ComplainsOnly("desk/out/1 carried desk/main/1 by the device's own routing and now carries silence, though no demand stands there.");
        scene
            .WithRoutes(Route("desk/aux/1", "desk/out/2"))
            .ComplainsOnly("desk/out/2 carried desk/main/2 by the device's own routing and now carries desk/aux/1, though no demand stands there.");
    }

    [Fact]
    public void A_factory_route_that_was_overridden_does_not_come_back()
    {
        var show = Of(("desk", SmallProfiles.Console)).With(Route(null, "desk/out/1"));

        new Scene { Show = show, Result = show.With(System.Array.Empty<Route>()) }.ComplainsOnly(
            "desk/out/1 carries desk/main/1, which no demand placed there; clear it or give the device another block."
        );
    }

    [Fact]
    public void A_stray_that_a_fixed_sender_forces_on_a_fixed_receiver_is_no_complaint()
    {
        var show = Of(("box-a", SmallProfiles.Box), ("box-b", SmallProfiles.Box), ("box-c", SmallProfiles.ClearableBox)) with
        {
            Feeds = [FeedTo("split", FeedRole.Utility, "box-a/in/1", "box-b")],
        };
        var scene = new Scene { Show = show, Result = show.With(Stream("s1", "box-a/transmit/1-4", "box-b/receive/1-4")) }
            .Place("split/1", "box-b/out/1")
            .IsValid();

        // The other box could clear, so there the same sound is not forced.
        scene
            .WithStream("s1", stream => stream with { To = [.. stream.To, new() { At = At("box-c/receive/1-4") }] })
            .Complains("box-c/out/1 carries box-a/in/1, which no demand placed there");
    }

    [Fact]
    public void What_a_cable_brings_on_from_a_place_is_no_stray()
    {
        var show = Of(("desk", SmallProfiles.Console), ("amp", SmallProfiles.Amplifier)) with
        {
            Feeds = [Feed("a", FeedRole.Utility, "desk/aux/1", "amp/in/1")],
        };
        show = show with { Rig = show.Rig with { Cables = [Cable("desk/out/1", "amp/in/1")] } };

        new Scene { Show = show, Result = show.With(Route("desk/aux/1", "desk/out/1")) }
            .Place("a/1", "desk/out/1")
            .IsValid();
    }

    [Fact]
    public void A_fixed_position_passes_on_whatever_its_cable_brings()
    {
        var thru = SmallProfiles.Amplifier with
        {
            Id = new("test/thru"),
            Through = [],
            PortGroups = [.. SmallProfiles.Amplifier.PortGroups, SmallProfiles.Group("thru", PortKind.Output, 4)],
            Routing = [SmallProfiles.Entry("in", "thru", RoutingMode.Fixed)],
        };
        var show = Of(("desk", SmallProfiles.Console), ("amp", thru)) with { Feeds = [Feed("a", FeedRole.Utility, "desk/aux/1", "desk/out/1")] };
        show = show with { Rig = show.Rig with { Cables = [Cable("desk/out/1-2", "amp/in/1-2")] } };

        new Scene { Show = show, Result = show.With(Route("desk/aux/1", "desk/out/1")) }
            .Place("a/1", "desk/out/1")
            .IsValid();
    }

    [Fact]
    public void A_channel_no_line_names_does_not_carry_a_placed_line() =>
        Scene
            .Paper(10)
            .WithPatch(patch => patch with { Routes = patch.Routes.Where(route => route.From is not null).ToValueList() })
            .ComplainsOnly("desk/channel/1 carries vocal, though no line names it; clear it.");

    [Fact]
    public void A_channel_no_line_names_keeps_what_it_took()
    {
        Scene
            .Paper(10)
            .WithRoutes(Route("desk/receive/8", "desk/channel/4"))
            .ComplainsOnly("desk/channel/4 took desk/receive/4 and now takes desk/receive/8, though nothing names it.");
        Scene
            .Paper(10)
            .WithRoutes(Route(null, "desk/channel/4"))
            .ComplainsOnly("desk/channel/4 took desk/receive/4 and now takes silence, though nothing names it.");
    }
}
