using RoutingRules.Documents.Tables;
using RoutingRules.Rules;
using RoutingRules.Waivers;

namespace RoutingRules.Documents.Formats;

/// <summary>The tables of waivers and of baselines.</summary>
internal static class WaiverTables
{
    private static readonly ObjectTable<Entity> Entity = CreateEntity();

    public static ObjectTable<WaiverList> Waivers { get; } = CreateWaivers();

    /// <summary>A waiver that stands in a show: it has no scope.</summary>
    public static ObjectTable<Waiver> InShow { get; } = CreateWaiver(true);

    public static ObjectTable<Baseline> Baseline { get; } = CreateBaseline();

    private static ObjectTable<Entity> CreateEntity()
    {
        var table = new TableBuilder<Entity>("entity", "entity", "A thing that a finding is about.");
        var role = table.Required("role", Kinds.SharedText, static entity => entity.Role, "The part it plays in the finding, such as output.");
        var id = table.Required("id", Kinds.FilledText, static entity => entity.Id, "Its id or address, such as box-r/out/5.");
        return table.Build((in Slots read) => new Entity { Role = role[read], Id = id[read] });
    }

    private static ObjectTable<WaiverList> CreateWaivers()
    {
        var waiver = CreateWaiver(false);
        var table = new TableBuilder<WaiverList>("waiverList", "list of waivers", "Decisions to live with findings for a time.");
        var version = table.Required("schemaVersion", new VersionKind(ShowTable.Version), static list => list.SchemaVersion, "The version of this format.");
        var waivers = table.RequiredList("waivers", waiver, static list => list.Waivers, "The waivers; of several that fit a finding the first counts.");
        var extensions = table.Extensions(static list => list.Extensions);
        return table.Build(
            (in Slots read) =>
                new WaiverList
                {
                    SchemaVersion = version[read],
                    Waivers = waivers[read],
                    Extensions = extensions[read],
                }
        );
    }

    private static ObjectTable<Waiver> CreateWaiver(bool isInShow)
    {
        var table = new TableBuilder<Waiver>(
            isInShow ? "showWaiver" : "waiver",
            "waiver",
            $"A decision to live with a finding for a time: who took it, why, {(isInShow ? "and until when" : "until when and for which documents")}."
        );
        var rule = table.Required(
            "rule",
            new NameKind("a rule's id or name"),
            static waiver => waiver.Rule,
            "The rule's id or name, such as RR2009 or output-stray."
        );
        var entities = table.List(
            "entities",
            Entity,
            static waiver => waiver.Entities,
            "What the finding is about: a finding is meant when it names all of these.",
            min: 1
        );
        var fingerprint = table.Optional(
            "fingerprint",
            new FingerprintKind(),
            static waiver => waiver.Fingerprint,
            "The identity of the one finding that is meant, as reports give it."
        );
        table.ExactlyOne([entities], [fingerprint]);
        var reason = table.Required("reason", Kinds.FilledText, static waiver => waiver.Reason, "Why this is acceptable.");
        var owner = table.Required("owner", Kinds.FilledText, static waiver => waiver.Owner, "Who answers for it.");
        var expires = table.Required("expires", Kinds.Date, static waiver => waiver.Expires, "The last day on which it counts.");
        var scope = isInShow
            ? null
            : table.RequiredList(
                "scope",
                Kinds.FilledText,
                static waiver => waiver.Scope,
                "The documents it counts for, as paths relative to this file: * stands for any characters but /, ** for any at all. ** alone "
                    + "means every document.",
                min: 1
            );
        return table.Build(
            (in Slots read) =>
                new Waiver
                {
                    Rule = rule[read],
                    Entities = entities[read],
                    Fingerprint = fingerprint[read],
                    Reason = reason[read],
                    Owner = owner[read],
                    Expires = expires[read],
                    Scope = scope is null ? default : scope[read],
                }
        );
    }

    private static ObjectTable<Baseline> CreateBaseline()
    {
        var document = CreateDocument();
        var table = new TableBuilder<Baseline>("baseline", "baseline", "Findings that were there when checking began: identities, never counts or places.");
        var version = table.Required(
            "schemaVersion",
            new VersionKind(ShowTable.Version),
            static baseline => baseline.SchemaVersion,
            "The version of this format."
        );
        var documents = table.RequiredList("documents", document, static baseline => baseline.Documents, "The documents with known findings, by path.");
        var extensions = table.Extensions(static baseline => baseline.Extensions);
        return table.Build(
            (in Slots read) =>
                new Baseline
                {
                    SchemaVersion = version[read],
                    Documents = documents[read],
                    Extensions = extensions[read],
                }
        );
    }

    private static ObjectTable<BaselineDocument> CreateDocument()
    {
        var finding = CreateFinding();
        var table = new TableBuilder<BaselineDocument>("baselineDocument", "document", "The known findings of one document.");
        var path = table.Required(
            "path",
            Kinds.FilledText,
            static document => document.Path,
            "The path of the document with /, relative to the folder of the baseline."
        );
        var findings = table.RequiredList("findings", finding, static document => document.Findings, "The findings, by rule and fingerprint.", min: 1);
        return table.Build((in Slots read) => new BaselineDocument { Path = path[read], Findings = findings[read] });
    }

    private static ObjectTable<BaselineFinding> CreateFinding()
    {
        var table = new TableBuilder<BaselineFinding>("baselineFinding", "known finding", "The identity of a known finding.");
        var rule = table.Required("rule", new NameKind("a rule's id"), static finding => finding.Rule, "The rule's id.");
        var fingerprint = table.Required("fingerprint", new FingerprintKind(), static finding => finding.Fingerprint, "The identity, which is what counts.");
        var entities = table.List("entities", Entity, static finding => finding.Entities, "What the finding was about, for people.");
        return table.Build(
            (in Slots read) =>
                new BaselineFinding
                {
                    Rule = rule[read],
                    Fingerprint = fingerprint[read],
                    Entities = entities[read],
                }
        );
    }
}
