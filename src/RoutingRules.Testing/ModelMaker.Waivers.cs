using RoutingRules.Rules;
using RoutingRules.Waivers;

namespace RoutingRules.Testing;

/// <content>Waivers and baselines.</content>
internal sealed partial class ModelMaker
{
    public WaiverList Waivers() => new() { Waivers = List(Waiver), Extensions = Extensions() };

    public Baseline Baseline() =>
        new()
        {
            Documents = List(() =>
                new BaselineDocument
                {
                    Path = FilledText(),
                    Findings = List(
                        () =>
                            new BaselineFinding
                            {
                                Rule = Name(),
                                Fingerprint = Fingerprint(),
                                Entities = List(Entity),
                            },
                        min: 1
                    ),
                }
            ),
            Extensions = Extensions(),
        };

    private Waiver Waiver()
    {
        var hasEntities = Flip();
        return new Waiver
        {
            Rule = Name(),
            Entities = hasEntities ? List(Entity, min: 1) : default,
            Fingerprint = hasEntities ? null : Fingerprint(),
            Reason = FilledText(),
            Owner = FilledText(),
            Expires = Date(),
            Scope = List(FilledText, min: 1),
        };
    }

    private Entity Entity() => new() { Role = FilledText(), Id = FilledText() };

    private string Fingerprint() => random.NextInt64().ToString("x16", System.Globalization.CultureInfo.InvariantCulture);
}
