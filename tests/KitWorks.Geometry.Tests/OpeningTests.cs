namespace KitWorks.Geometry.Tests;

/// <summary>Doors and vents. How they are framed is common practice, no source; what must be true of any of them is checked here.</summary>
public class OpeningTests
{
    static Frame Dome(int frequency, string cut, int c = 0, bool flat = false) => Frame.Build(new Dome
    {
        Lattice = new(frequency - c, c), Cut = Cut.TryParse(cut, out var parsed) ? parsed : throw new ArgumentException(cut), FlatBase = flat,
        Size = new Size.FloorDiameter(Length.FromMillimetres(6000)),
    }).Value;

    static Frame Oblong(int frequency, int bays) =>
        Frame.Build(new Oblong { Fold = 6, Frequency = frequency, Bays = bays, Size = new Size.LongestStrut(Length.FromMillimetres(1524)) }).Value;

    public static TheoryData<string> Shelters => new("2V", "3V", "4V", "class 2", "flat", "oblong 1", "oblong 2");

    static Frame Built(string name) => name switch
    {
        "2V" => Dome(2, "1/2"), "3V" => Dome(3, "5/8"), "4V" => Dome(4, "1/2"), "class 2" => Dome(4, "rows:6", 2), "flat" => Dome(3, "5/8", flat: true),
        "oblong 1" => Oblong(1, 1), _ => Oblong(2, 0),
    };

    [Theory, MemberData(nameof(Shelters))]
    public void Of_ALevelDoor_SwapsAHubForTwoFeetAndPosts(string name)
    {
        var frame = Built(name);
        var opened = OpenedFrame.Of(frame, [new Door()]).Value;
        var door = opened.Openings.Single();

        Assert.Equal(frame.Nodes.Length + 1, opened.Frame.Nodes.Length);
        Assert.Equal(frame.Struts.Length, opened.Frame.Struts.Length);
        Assert.Equal(frame.Panels.Length - 3 + 2, opened.Frame.Panels.Length);
        Assert.Equal(frame.Base.Length + 1, opened.Frame.Base.Length);
        Assert.Equal((1, 4, 3), (door.HubsLeftOut, door.StrutsLeftOut, door.PanelsLeftOut));
        foreach (var post in door.Posts.Select(id => opened.Frame.Struts[id]))
        {
            var (a, b) = (opened.Frame.Nodes[post.From].Position, opened.Frame.Nodes[post.To].Position);
            Assert.Equal((a.X, a.Y), (b.X, b.Y));
            Assert.True(post.SpacingMm >= door.ClearHeightMm - 1e-6);
        }
        var lintel = opened.Frame.Struts[Assert.Single(door.Doubled)];
        Assert.Contains(lintel.From, door.Edge);
        Assert.Contains(lintel.To, door.Edge);
        Holds(opened, frame);
    }

    [Theory, MemberData(nameof(Shelters))]
    public void Of_APeakedDoor_IsHigherByItsGable(string name)
    {
        var frame = Built(name);
        if (!OpenedFrame.Of(frame, [new Door { Top = DoorTop.Peaked }]).Succeeds(out var opened, out var refusal))
        {
            Assert.Equal(("opening.place-invalid", "openings/0/kind"), (refusal.Code, refusal.Errors.Single().Field));
            return;
        }
        var (door, stake) = (opened.Openings.Single(), ((Door)opened.Openings[0].Opening).Stake);
        Assert.Equal(frame.Struts.Length - 1, opened.Frame.Struts.Length);
        Assert.Equal(2, door.Doubled.Length);
        Assert.True(door.ClearHeightMm > OpenedFrame.Of(frame, [new Door { Stake = stake }]).Value.Openings[0].ClearHeightMm);
        Holds(opened, frame);
    }

    [Theory, MemberData(nameof(Shelters))]
    public void Of_AVent_LeavesOutAPanelAndDoublesItsStruts(string name)
    {
        var frame = Built(name);
        var opened = OpenedFrame.Of(frame, [new Vent()]).Value;
        var (vent, panel) = (opened.Openings.Single(), frame.Panels[((Vent)opened.Openings[0].Opening).Panel!.Value]);

        Assert.Equal(frame.Nodes, opened.Frame.Nodes);
        Assert.Equal(frame.Struts, opened.Frame.Struts);
        Assert.Equal(frame.Panels.Length - 1, opened.Frame.Panels.Length);
        Assert.Equal([panel.A, panel.B, panel.C], vent.Edge);
        Assert.Equal(3, vent.Doubled.Distinct().Count());
        Assert.All(vent.Doubled, s => Assert.True(vent.Edge.Contains(frame.Struts[s].From) && vent.Edge.Contains(frame.Struts[s].To)));
        Assert.All(vent.Edge, n => Assert.True(frame.Nodes[n].Tier > 0));
        Holds(opened, frame);
    }

    [Fact]
    public void Of_TheTopVentOfATwoFrequencyDome_IsAsWideAsItsInscribedCircle()
    {
        var frame = Dome(2, "1/2");
        var vent = OpenedFrame.Of(frame, [new Vent()]).Value.Openings.Single();
        // The top panels of a 2V dome have sides 0.546533·R, twice, and 0.618034·R (chord factors, any table).
        double a = 0.5465330578 * frame.RadiusMm!.Value, c = 0.6180339887 * frame.RadiusMm.Value;
        var area = c / 4 * Math.Sqrt(4 * a * a - c * c);
        Assert.Equal(4 * area / (2 * a + c), vent.ClearWidthMm, 1e-3);
    }

    [Fact]
    public void Of_TheSameOpeningsInAnyOrder_IsTheSameFrame()
    {
        var frame = Dome(4, "1/2");
        var one = OpenedFrame.Of(frame, [new Vent(), new Door { Stake = 9 }, new Door { Stake = 1, Top = DoorTop.Peaked }]).Value;
        var other = OpenedFrame.Of(frame, [new Door { Stake = 1, Top = DoorTop.Peaked }, new Vent { Panel = ((Vent)one.Openings[2].Opening).Panel }, new Door { Stake = 9 }]).Value;
        Assert.Equal(one.Openings.Select(o => o.Opening), other.Openings.Select(o => o.Opening));
        Assert.Equal(one.Frame.Nodes, other.Frame.Nodes);
        Assert.Equal(one.Frame.Struts, other.Frame.Struts);
        Assert.Equal(one.Frame.Panels, other.Frame.Panels);
        Holds(one, frame);
    }

    [Fact]
    public void Of_NoOpenings_IsTheFrame()
    {
        var frame = Dome(3, "5/8");
        Assert.Same(frame, OpenedFrame.Of(frame, null).Value.Frame);
        Assert.Same(frame, OpenedFrame.Of(frame, []).Value.Frame);
    }

    [Fact]
    public void Of_WhereAnOpeningCannotBe_SaysWhereItCan()
    {
        var frame = Dome(3, "5/8");
        Refuses("openings/0/stake", "There is no stake 16", new Door { Stake = 16 });
        Refuses("openings/0/stake", "There is no stake 0", new Door { Stake = 0 });
        Refuses("openings/0/panel", "There is no panel -1", new Vent { Panel = -1 });
        Refuses("openings/0/panel", "on the ground", new Vent { Panel = frame.Panels.Length - 1 });
        Refuses("openings/1/panel", "shares hubs", new Vent { Panel = 0 }, new Vent { Panel = 1 });
        var full = OpenedFrame.Of(frame, [.. Enumerable.Repeat(new Door(), 9)]).Refusal!;
        Assert.Equal("openings", full.Errors.Single().Field);
        var crowded = OpenedFrame.Of(Dome(2, "1/2"), [.. Enumerable.Repeat(new Door(), 8)]).Refusal!;
        Assert.EndsWith("/stake", crowded.Errors.Single().Field, StringComparison.Ordinal);
        Assert.Contains("no room", crowded.Detail, StringComparison.Ordinal);

        void Refuses(string field, string words, params Opening[] openings)
        {
            var refusal = OpenedFrame.Of(frame, openings).Refusal!;
            Assert.Equal((field, "opening.place-invalid"), (refusal.Errors.Single().Field, refusal.Code));
            Assert.Contains(words, refusal.Detail, StringComparison.Ordinal);
        }
    }

    /// <summary>What is true of every opened frame.</summary>
    static void Holds(OpenedFrame opened, Frame before)
    {
        var frame = opened.Frame;
        Assert.Equal(Enumerable.Range(0, frame.Nodes.Length), frame.Nodes.Select(n => n.Id));
        Assert.Equal(Enumerable.Range(0, frame.Struts.Length), frame.Struts.Select(s => s.Id));
        Assert.Equal(frame.Struts.Length, frame.Struts.Select(s => (s.From, s.To)).Distinct().Count());
        Assert.All(frame.Struts, s => Assert.True(s.From < s.To));
        Assert.All(frame.Struts, s => Assert.Equal(frame.Nodes[s.From].Position.DistanceTo(frame.Nodes[s.To].Position), s.SpacingMm, 1e-5));
        Assert.All(frame.Struts, s => Assert.Equal(Math.Max(frame.Nodes[s.From].Tier, frame.Nodes[s.To].Tier), s.Tier));
        Assert.All(frame.Nodes, n => Assert.Equal(frame.Struts.Count(s => s.From == n.Id || s.To == n.Id), n.Degree));
        Assert.Equal(frame.Families.Select(f => f.Count), frame.Families.Select(f => frame.Struts.Count(s => s.Family == f.Index)));
        Assert.Equal(frame.Families.Select(f => f.SpacingMm).Order(), frame.Families.Select(f => f.SpacingMm));
        Assert.Equal(frame.PanelKinds.Select(k => k.Count), frame.PanelKinds.Select(k => frame.Panels.Count(p => p.Kind == k.Index)));
        Assert.All(frame.Base, n => Assert.Equal(0, frame.Nodes[n].Tier));
        Assert.All(frame.Nodes, n => Assert.Equal(frame.Base.Contains(n.Id), n.Tier == 0));

        // With every opening shut the panels are one sheet again: each side inside it in two panels, one each way, and its rim the base ring.
        var sides = frame.Panels.Concat(opened.Shut).SelectMany(p => new[] { (p.A, p.B), (p.B, p.C), (p.C, p.A) }).ToList();
        Assert.Equal(sides.Count, sides.Distinct().Count());
        var rim = sides.Where(s => !sides.Contains((s.Item2, s.Item1))).Order();
        Assert.Equal(frame.Base.Select((n, i) => (n, frame.Base[(i + 1) % frame.Base.Length])).Order(), rim);
        Assert.Equal(before.Dimensions.VolumeM3, frame.Dimensions.VolumeM3);
        Assert.True(frame.Dimensions.CoverAreaM2 < before.Dimensions.CoverAreaM2);
    }
}
