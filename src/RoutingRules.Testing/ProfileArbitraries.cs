using FsCheck;
using FsCheck.Fluent;
using RoutingRules.Profiles;

namespace RoutingRules.Testing;

/// <summary>FsCheck arbitraries of sound device profiles: nothing in them contradicts itself, so the engine has no complaint about any.</summary>
/// <remarks>
/// Built by construction. Ids start with <c>made/</c>. Groups have 1 to about 16 points, blocks 1, 2 or 4 slots; counts need not be whole blocks.
/// They shrink to fewer groups, points and routes and stay sound.
/// </remarks>
public static class ProfileArbitraries
{
    /// <summary>Any of the kinds below, and splits and recorders.</summary>
    public static Arbitrary<DeviceProfile> Any() => Of(static maker => maker.Any());

    /// <summary>
    /// Consoles: groups <c>aux</c>, <c>main</c>, <c>channel</c>, <c>transmit</c>, <c>receive</c>, <c>net</c>, some with <c>in</c>, <c>out</c> and an insert.
    /// </summary>
    public static Arbitrary<DeviceProfile> Consoles() => Of(static maker => maker.Console());

    /// <summary>
    /// Stage boxes: <c>out</c>, <c>transmit</c>, <c>receive</c>, <c>net</c>, most with <c>in</c>; routing fixed, clearable, free or in blocks.
    /// </summary>
    public static Arbitrary<DeviceProfile> Boxes() => Of(static maker => maker.Box());

    /// <summary>Processors: <c>in</c> processed to <c>out</c>, position by position; some have an output without an input.</summary>
    public static Arbitrary<DeviceProfile> Processors() => Of(static maker => maker.Processor());

    /// <summary>Selectors: legs <c>in-a</c> and <c>in-b</c>, output <c>out</c>, which is itself a source.</summary>
    public static Arbitrary<DeviceProfile> Selectors() => Of(static maker => maker.Selector());

    /// <summary>Ends of a digital multicore, box or converter, whose slots live on jack <c>mc/1</c>.</summary>
    public static Arbitrary<DeviceProfile> Carriers() => Of(static maker => maker.CarrierEnd());

    private static Arbitrary<DeviceProfile> Of(Func<ProfileMaker, DeviceProfile> make) =>
        Arb.From(Dice.Throw(dice => make(new ProfileMaker(dice))), ProfileShrinker.Shrink);
}
