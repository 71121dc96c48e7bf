using System.CommandLine;
using RoutingRules.Cli.Input;
using RoutingRules.Model;
using RoutingRules.Reports.Riders;

namespace RoutingRules.Cli.Commands;

/// <summary><c>rider</c>: reads a band's list of inputs and mixes into a show.</summary>
internal static class RiderCommand
{
    public static Command Create(CliConsole console, CancellationToken cancellation)
    {
        var file = new Argument<string>("FILE") { Description = "The show with the rig of the house. It is changed only with --in-place." }.NamesNoOption();
        var list = new Argument<string>("LIST") { Description = "The band's list as CSV in UTF-8, or - for standard input." }.NamesNoOption();
        var boxes = Devices("--box", "Lines may be plugged, and wedges fed, at this device. Without it, the only stage box.");
        var consoles = Devices("--console", "The channels of this console take the lines. Without it, the only console.");
        var mixing = new Option<string?>("--mix-console")
        {
            HelpName = "ID",
            Description = "The buses of this console make the mixes. Without it, the last of --console.",
        };
        var channel = ToolOptions.Number("--from-channel", 1, 9999, "The channel for the band's number 1; usually 1.");
        var bus = ToolOptions.Number("--from-bus", 1, 9999, "The bus for the band's first mix; usually 1.");
        var (edit, setup) = (new EditOptions("filled"), new EngineOptions());
        var command = new ToolCommand(
            "rider",
            "Read the list of inputs and mixes that a band sends into a show: lines with channels by their numbers, wedges and ears with buses. Titles, "
                + "headings, empty rows and totals are passed over; rows for left and right become one line. What the list does not say clearly becomes a "
                + "question and is left out. Then assign finds the places.",
            "routing-rules rider house.show.json band.csv --box box-r --box box-l --out friday.show.json\nTakes the band onto two stage boxes of the house.",
            "routing-rules rider house.show.json band.csv --from-channel 33 --dry-run\nSays what a second band would add, from channel 33."
        )
        {
            file,
            list,
            boxes,
            consoles,
            mixing,
            channel,
            bus,
            edit,
            setup,
        };
        command.SetAction(parsed =>
        {
            var job = edit.Read(parsed, parsed.GetRequiredValue(file));
            var from = parsed.GetRequiredValue(list);
            ListInput.RefuseBoth(job.Path, from);
            var (engine, loaded) = setup.Create(parsed, [job.Path], console, cancellation);
            if (ShowToEdit.Read(job.Path, job.Done, engine, console, cancellation) is not { } input)
            {
                return ExitCode.Usage;
            }

            var text = ListInput.Load(from, console, cancellation);
            var options = new RiderOptions
            {
                Boxes = Ids(parsed.GetRequiredValue(boxes)),
                Consoles = Ids(parsed.GetRequiredValue(consoles)),
                MixConsole = parsed.GetValue(mixing) is { } id ? new Id<Device>(id) : null,
                FirstChannel = (int)(parsed.GetValue(channel) ?? 1),
                FirstBus = (int)(parsed.GetValue(bus) ?? 1),
            };
            var result = Rider.Read(engine.Resolve(input.Show), text.Span, options);
            var name = InputDocument.NameOf(from);
            if (result.Show is null)
            {
                throw new UsageException($"the list was not read, and nothing was written.\n{RiderAccount.Each(name, result.Problems)}".TrimEnd('\n'));
            }

            job.Run(
                input,
                [from, .. loaded.Files],
                () => new(result.Show, result.Edits, RiderAccount.Heading(result, false), RiderAccount.Text(input.Name, name, result, job.IsDry)),
                console
            );
            if (!job.IsDry && job.OutPath is null && !job.IsInPlace && !result.Questions.IsEmpty)
            {
                CliRunner.Say(console, $"questions for the band:\n{RiderAccount.Each(name, result.Questions)}".TrimEnd('\n'));
            }

            return result.Questions.IsEmpty ? ExitCode.Clean : ExitCode.Findings;
        });
        return command;
    }

    private static Option<string[]> Devices(string name, string description) =>
        new(name)
        {
            HelpName = "ID",
            Description = $"{description} May be given several times.",
            DefaultValueFactory = _ => [],
        };

    private static ValueList<Id<Device>> Ids(string[] named) => named.Select(id => new Id<Device>(id)).ToValueList();
}
