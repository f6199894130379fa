package gradepost.briefing.word;

import gradepost.stock.Stock;
import gradepost.told.PrintedApplication;
import gradepost.told.PrintedCommand;
import gradepost.told.PrintedOrder;
import gradepost.told.PrintedTrigger;
import gradepost.told.print.PrintedPressure;
import gradepost.told.print.PrintedSpeed;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What an instruction tells the driver, spelt. */
public final class ActionWords {
  private final Words words;
  private final Stock stock;

  public ActionWords(Words words, Stock stock) {
    this.words = words;
    this.stock = stock;
  }

  private final class Todo implements PrintedCommand.Cases<String> {
    @Override
    public String power(PrintedCommand.Power power) {
      return words.text("do.power", notch(power.notch()));
    }

    @Override
    public String shutOff(PrintedCommand.ShutOff off) {
      return words.text("do.shut-off");
    }

    @Override
    public String brake(PrintedCommand.Brake brake) {
      return switch (brake.stage()) {
        case FIRST -> words.text("do.first");
        case MAIN -> words.text("do.main");
        case EASE -> words.text("do.ease");
        case CHECK -> words.text("do.check");
        case TEST -> words.text("do.test");
      };
    }

    @Override
    public String release(PrintedCommand.Release release) {
      return words.text("do.release");
    }

    @Override
    public String stand(PrintedCommand.Stand stand) {
      return words.text("do.stand");
    }

    @Override
    public String hold(PrintedCommand.Hold hold) {
      return held(hold);
    }
  }

  private final class Gauge implements PrintedCommand.Cases<String> {
    @Override
    public String power(PrintedCommand.Power power) {
      return words.text("dash");
    }

    @Override
    public String shutOff(PrintedCommand.ShutOff off) {
      return words.text("dash");
    }

    @Override
    public String brake(PrintedCommand.Brake brake) {
      return brake.pressure().text();
    }

    @Override
    public String release(PrintedCommand.Release release) {
      return words.text("gauge.falling");
    }

    @Override
    public String stand(PrintedCommand.Stand stand) {
      return words.text("dash");
    }

    @Override
    public String hold(PrintedCommand.Hold hold) {
      return hold.by().match(notch -> words.text("dash"), brake -> brake.pressure().text());
    }
  }

  /** What is waited for; empty text where it is the place. */
  private final class When implements PrintedTrigger.Cases<String> {
    @Override
    public String atPlace(PrintedTrigger.AtPlace at) {
      return "";
    }

    @Override
    public String speedUpTo(PrintedTrigger.SpeedUpTo up) {
      return words.text("when.up-to", up.speed().text());
    }

    @Override
    public String speedDownTo(PrintedTrigger.SpeedDownTo down) {
      return words.text("when.down-to", down.speed().text());
    }

    @Override
    public String after(PrintedTrigger.After after) {
      return words.text("when.after", words.time(after.time()));
    }

    @Override
    public String start(PrintedTrigger.Start start) {
      return "";
    }

    @Override
    public String standstill(PrintedTrigger.Standstill stand) {
      return "";
    }
  }

  /** One part of a braking that is told in a line. */
  private final class Stage implements PrintedTrigger.Cases<String> {
    private final String does;

    private Stage(String does) {
      this.does = does;
    }

    @Override
    public String atPlace(PrintedTrigger.AtPlace at) {
      return does;
    }

    @Override
    public String speedUpTo(PrintedTrigger.SpeedUpTo up) {
      return does;
    }

    @Override
    public String speedDownTo(PrintedTrigger.SpeedDownTo down) {
      return words.text("stage.at-speed", down.speed().text(), does);
    }

    @Override
    public String after(PrintedTrigger.After after) {
      return words.text("stage.after", words.time(after.time()), does);
    }

    @Override
    public String start(PrintedTrigger.Start start) {
      return does;
    }

    @Override
    public String standstill(PrintedTrigger.Standstill stand) {
      return does;
    }
  }

  /** Between which speeds, with what, and up to where. */
  private String held(PrintedCommand.Hold hold) {
    String lower = Long.toString(hold.lower().number());
    String upper = hold.upper().text();
    String until = words.spelt(hold.until(), "");
    return hold.by()
        .match(
            notch -> words.text("do.hold.power", lower, upper, notch(notch.notch()), until),
            brake -> words.text("do.hold.brake", lower, upper, brake.pressure().text(), until));
  }

  /** The instruction for a command. */
  public String todo(PrintedCommand command) {
    return command.match(new Todo());
  }

  /** What the gauge shows after it; a dash where that does not matter. */
  public String gauge(PrintedCommand command) {
    return command.match(new Gauge());
  }

  /** What the gauge shows after each part of an order. */
  public String gauge(PrintedOrder order) {
    return order.further().stream()
        .map(PrintedOrder.Further::does)
        .filter(does -> does.brake().isPresent())
        .map(this::gauge)
        .reduce(gauge(order.does()), (shown, next) -> words.text("gauge.then", shown, next));
  }

  /**
   * Behind the first part of an order that is no power, each that follows: the main application,
   * the release that ends a running brake test, or less brake as the speed drops.
   *
   * @param brake the key of a further brake by the time or speed that is waited for
   */
  private String behind(String first, PrintedOrder order, Function<PrintedTrigger, String> brake) {
    if (order.does().power().isPresent()) {
      return first;
    }
    String told = first;
    for (PrintedOrder.Further f : order.further()) {
      String key = f.does().brake().isPresent() ? brake.apply(f.on()) : "do.then-release";
      told = words.text(key, told, waited(f.on()), gauge(f.does()));
    }
    return told;
  }

  /** The bare time or speed. */
  private String waited(PrintedTrigger on) {
    return on.waited()
        .map(words::time)
        .or(() -> on.dropped().map(PrintedSpeed::text))
        .orElseThrow();
  }

  /** A whole order in a few words: a power handle with its notches, and the wait for each. */
  String todo(PrintedOrder order) {
    if (order.further().isEmpty() || order.does().power().isEmpty()) {
      return todo(order.does());
    }
    PrintedOrder.Further last = order.further().get(order.further().size() - 1);
    String through =
        words.text(
            "do.power-through", first(order), bare(last.does().power().orElseThrow().notch()));
    List<String> waits = order.further().stream().map(f -> waited(f.on())).toList();
    return waits.stream().distinct().count() == 1
        ? words.text("do.power-each", through, waits.get(0))
        : words.text("do.power-after", through, String.join(words.text("do.then"), waits));
  }

  /**
   * A whole order in a few words: a power handle with its notches, and the wait for each; a first
   * application, and when the main one follows; a brake test, and when it ends; less brake, and at
   * what speed still less. Where more than one application is made, it says what this one is for.
   *
   * @param begun the application that it begins, where that is to be named
   */
  public String todo(PrintedOrder order, Optional<PrintedApplication> begun) {
    return behind(
        named(todo(order), begun),
        order,
        on -> on.waited().isPresent() ? "do.first-main" : "do.ease-again");
  }

  private String named(String plain, Optional<PrintedApplication> begun) {
    return begun.map(b -> words.text("do.named", plain, purpose(b))).orElse(plain);
  }

  /** What an application is for. */
  public String purpose(PrintedApplication application) {
    return application
        .forSpeed()
        .map(speed -> words.text("do.for-speed", speed.text()))
        .orElse(words.text("do.for-stand"));
  }

  /** The notch that an order for power ends in; empty text where it takes none. */
  public String lastNotch(PrintedOrder order) {
    return order.further().stream()
        .flatMap(f -> f.does().power().stream())
        .reduce((notch, later) -> later)
        .map(power -> notch(power.notch()))
        .orElse(first(order));
  }

  private String first(PrintedOrder order) {
    return order.does().power().map(power -> notch(power.notch())).orElse("");
  }

  private String notch(int index) {
    return words.notch(bare(index));
  }

  private String bare(int index) {
    return stock.traction().notches().get(index).name();
  }

  /** A whole order with its pressure and what it waits for, in a line. */
  public String whole(PrintedOrder order, Optional<PrintedApplication> begun) {
    String plain = named(todo(order), begun);
    String todo =
        order
            .does()
            .brake()
            .map(brake -> words.text("do.with-pressure", plain, brake.pressure().text()))
            .orElse(plain);
    String when = when(order.on());
    String first = when.isEmpty() ? todo : words.text("do.when", todo, when);
    return behind(first, order, on -> on.waited().isPresent() ? "do.then-main" : "do.then-ease");
  }

  /** A whole braking in a line: first pressure, and when the brake is worked again. */
  public String technique(List<PrintedOrder> orders) {
    return technique(orders, PrintedPressure::text);
  }

  private String technique(List<PrintedOrder> orders, Function<PrintedPressure, String> spelt) {
    return orders.stream().flatMap(o -> stages(o, spelt)).collect(Collectors.joining(", "));
  }

  private Stream<String> stages(PrintedOrder order, Function<PrintedPressure, String> spelt) {
    return Stream.concat(
        Stream.of(stage(order, spelt)),
        order.further().stream()
            .map(f -> stage(new PrintedOrder(f.on(), f.does(), List.of()), spelt)));
  }

  /** The same with bare pressures, where a heading has the unit. */
  public String figures(List<PrintedOrder> orders) {
    return technique(orders, this::number);
  }

  /** A pressure without its unit. */
  public String number(PrintedPressure pressure) {
    String text = pressure.text();
    return text.substring(0, text.length() - words.units().pressureUnit().length()).strip();
  }

  private String stage(PrintedOrder order, Function<PrintedPressure, String> spelt) {
    String does =
        order
            .does()
            .brake()
            .map(b -> spelt.apply(b.pressure()))
            .orElseGet(() -> todo(order.does()));
    return order.on().match(new Stage(does));
  }

  /** What is waited for; empty text where that is the place. */
  public String when(PrintedTrigger trigger) {
    return trigger.match(new When());
  }
}
