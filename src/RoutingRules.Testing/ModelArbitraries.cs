using FsCheck;
using FsCheck.Fluent;
using RoutingRules.Configuration;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Waivers;

namespace RoutingRules.Testing;

/// <summary>
/// FsCheck arbitraries of anything the document format can say: every member present in some and absent in others, references that may lead nowhere.
/// </summary>
/// <remarks>For tests of readers, writers and tools that must take any document. Values shrink to fewer list entries and fewer members.</remarks>
public static class ModelArbitraries
{
    /// <summary>Shows.</summary>
    public static Arbitrary<Show> Shows() => Arb.From(Make(static maker => maker.Show()), ModelShrinker.Shrink);

    /// <summary>Device profiles.</summary>
    public static Arbitrary<DeviceProfile> Profiles() => Arb.From(Make(static maker => maker.Profile()), ModelShrinker.Shrink);

    /// <summary>Configurations.</summary>
    public static Arbitrary<EngineConfig> Configs() => Arb.From(Make(static maker => maker.Config()), ModelShrinker.Shrink);

    /// <summary>Lists of waivers, with rules that may not exist and patterns that may never fit.</summary>
    public static Arbitrary<WaiverList> Waivers() => Arb.From(Make(static maker => maker.Waivers()));

    /// <summary>Baselines, in which a document or a finding may stand twice.</summary>
    public static Arbitrary<Baseline> Baselines() => Arb.From(Make(static maker => maker.Baseline()));

    /// <summary>Texts that the format takes: any characters, beyond the basic plane too, but control characters and half surrogate pairs.</summary>
    public static Arbitrary<string> Texts() => Arb.From(Make(static maker => maker.Text()));

    private static Gen<T> Make<T>(Func<ModelMaker, T> make) =>
        Gen.Sized(size => Gen.Choose(0, int.MaxValue - 1).Select(seed => make(new ModelMaker(seed, size))));
}
